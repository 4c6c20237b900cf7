import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type BrowserContext, expect, type Page, test } from "@playwright/test";
import type { ChildServer } from "../../tools/childServer.ts";
import { ownServer } from "./shopServer.ts";

/* A counter that nobody touches, while the shop's server comes and goes. */

// A question in vain takes as long as it may, and comes as often.
const SEEN = { timeout: 30_000 };

let data: string;
let server: ChildServer;
test.beforeEach(async () => {
  data = mkdtempSync(join(tmpdir(), "gritwright-idle-"));
  server = await ownServer(data, 0);
});
test.afterEach(async () => {
  await server.kill();
  rmSync(data, { recursive: true, force: true });
});

async function standingIn(room: "Today" | "Stock", context: BrowserContext, isKept: boolean): Promise<Page> {
  const page = await context.newPage();
  await page.goto(`${server.address}${room === "Today" ? "/" : "/stock"}`);
  await expect(page.locator("#answer h1")).toHaveText(room);
  if (!isKept) return page;
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
  // What was read before the page was kept is not in its memory.
  await page.reload();
  await expect(page.locator("#answer h1")).toHaveText(room);
  await page.waitForLoadState("networkidle").catch(() => undefined);
  return page;
}

for (const room of ["Today", "Stock"] as const)
  for (const serviceWorkers of ["allow", "block"] as const)
    test(`${room} says that the server has gone, and that it is back; service workers: ${serviceWorkers}`, async ({ browser }) => {
      test.setTimeout(120_000);
      const context = await browser.newContext({ serviceWorkers });
      const page = await standingIn(room, context, serviceWorkers === "allow");
      await server.kill();
      await expect(page.getByText("The shop's server does not answer.")).toBeVisible(SEEN);
      if (serviceWorkers === "allow") await expect(page.getByText(/What you see was read .* or later\./)).toBeVisible(SEEN);
      await expect(page.locator("#answer h1")).toHaveText(room);
      server = await ownServer(data, Number(new URL(server.address).port));
      await expect(page.getByText("The shop's server answers again")).toBeVisible(SEEN);
      await context.close();
    });

test("a server that hangs is away too, until it answers", async ({ browser }) => {
  test.setTimeout(120_000);
  const context = await browser.newContext();
  const page = await standingIn("Today", context, false);
  server.process.kill("SIGSTOP");
  await expect(page.getByText("The shop's server does not answer.")).toBeVisible(SEEN);
  server.process.kill("SIGCONT");
  await expect(page.getByText("The shop's server answers again")).toBeVisible(SEEN);
  await context.close();
});
