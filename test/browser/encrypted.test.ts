import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type Browser, chromium, expect, type Page, test } from "@playwright/test";
import type { ChildServer } from "../../tools/childServer.ts";
import { certificateIn } from "../server/certificate.ts";
import { ownServer, setPassword } from "./shopServer.ts";

/*
 * The server on every address of this machine, opened by a name that is not the machine's own: what browsers give to secure addresses only is there.
 * The browser is told where the name leads and that it may trust this one key; nothing else about certificates is switched off.
 */

const NAME = "shop.example";
const OWNER = "seven herons on a jetty";

let data: string;
let server: ChildServer;
let browser: Browser;
let digest: string;
test.beforeAll(async ({ launchOptions }) => {
  data = mkdtempSync(join(tmpdir(), "gritwright-encrypted-"));
  await setPassword(data, "ansel", OWNER);
  const { cert, key, keyDigest } = certificateIn(data, NAME);
  digest = keyDigest;
  server = await ownServer(data, 0, ["--own", "--address", "0.0.0.0", "--cert", cert, "--key", key, "--name", NAME]);
  const args = [`--host-resolver-rules=MAP ${NAME} 127.0.0.1`, `--ignore-certificate-errors-spki-list=${digest}`];
  browser = await chromium.launch({ ...launchOptions, args: [...(launchOptions.args ?? []), ...args] });
});
test.afterAll(async () => {
  await browser.close();
  await server.kill();
  rmSync(data, { recursive: true, force: true });
});

async function signedIn(): Promise<Page> {
  const page = await browser.newPage();
  await page.goto(`${server.address}/`);
  await page.getByLabel("Name to sign in with").fill("ansel");
  await page.getByLabel("Password", { exact: true }).fill(OWNER);
  await page.getByRole("button", { name: "Sign in" }).click();
  await expect(page.getByRole("heading", { name: "Today" })).toBeVisible();
  return page;
}

test("by a name in the shop's network the page is a secure context: it is kept by a service worker, and the screen is kept awake", async () => {
  expect(server.address).toMatch(new RegExp(`^https://${NAME}:\\d+$`));
  const page = await signedIn();
  const seen = await page.evaluate(async () => {
    const registration = await navigator.serviceWorker.ready;
    const lock = await navigator.wakeLock.request("screen");
    const given = { type: lock.type, wasReleased: lock.released };
    await lock.release();
    return { isSecure: isSecureContext, host: location.hostname, worker: registration.active?.scriptURL, ...given };
  });
  expect(seen).toEqual({ isSecure: true, host: NAME, worker: `${server.address}/sw.js`, type: "screen", wasReleased: false });
  await expect(page.getByText("This address is neither this machine itself nor encrypted")).toHaveCount(0);
  await page.close();
});

test("session and known device: their cookies are out of reach of scripts, and belong to this host and to encrypted connections alone", async () => {
  const page = await signedIn();
  expect(await page.evaluate(() => document.cookie)).toBe("");
  const cookies = await page.context().cookies();
  expect(cookies.map(({ name }) => name).sort()).toEqual(["__Host-gritwright-device", "__Host-gritwright-session"]);
  for (const cookie of cookies) expect(cookie).toMatchObject({ domain: NAME, path: "/", httpOnly: true, secure: true, sameSite: "Strict" });
  await page.close();
});

test("what the page has kept opens while the server is away", async () => {
  const page = await signedIn();
  await page.evaluate(async () => {
    await navigator.serviceWorker.ready;
    while (navigator.serviceWorker.controller === null) await new Promise((resolve) => setTimeout(resolve, 50));
  });
  await page.reload();
  await expect(page.getByRole("heading", { name: "Today" })).toBeVisible();
  await server.kill();
  await page.reload();
  await expect(page.getByRole("heading", { name: "Today" })).toBeVisible();
  await expect(page.getByText("The shop's server does not answer. Work goes on")).toBeVisible();
  await page.close();
});
