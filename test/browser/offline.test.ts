import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type APIRequestContext, type BrowserContext, expect, type Page, test } from "@playwright/test";
import type { ChildServer } from "../../tools/childServer.ts";
import { finished, openWish } from "./room.ts";
import { ownServer } from "./shopServer.ts";

/* The page while the server's process is dead: this machine is a secure address, so the page is kept. */

let data: string;
let server: ChildServer;
let context: BrowserContext;
test.beforeEach(async ({ browser }) => {
  data = mkdtempSync(join(tmpdir(), "gritwright-offline-"));
  server = await ownServer(data, 0);
  context = await browser.newContext({ baseURL: server.address });
});
test.afterEach(async () => {
  await context.close();
  await server.kill();
  rmSync(data, { recursive: true, force: true });
});

async function back(): Promise<void> {
  server = await ownServer(data, Number(new URL(server.address).port));
}

/** A page that is kept: its files are there and it answers for the page. */
async function keptPage(): Promise<Page> {
  const page = await context.newPage();
  await page.goto("/");
  await page.evaluate(async () => {
    await navigator.serviceWorker.ready;
    while (navigator.serviceWorker.controller === null) await new Promise((resolve) => setTimeout(resolve, 50));
  });
  return page;
}

interface OpenTicket {
  readonly id: string;
  readonly version: number;
  readonly stages: readonly { readonly id: string }[];
}

async function openTicket(request: APIRequestContext): Promise<OpenTicket> {
  const { items } = await (await request.get("/api/queue")).json();
  const found = items.find(
    ({ ticket }: { ticket: OpenTicket & { state: string; stops: readonly unknown[] } }) =>
      ticket.state === "received" && ticket.stages.length > 2 && ticket.stops.length === 0,
  );
  if (found === undefined) throw new Error("Nothing waits in the invented shop.");
  return found.ticket;
}

const nowOf = async (id: string) => (await context.request.get(`/api/tickets/${id}`)).json();

test("opened while the server is dead: today, a ticket and the guide are there, it is said from when, and a stage signed is sent later, once", async () => {
  test.setTimeout(120_000);
  const page = await keptPage();
  const ticket = await openTicket(context.request);
  await page.goto(`/tickets/${ticket.id}`);
  await expect(page.getByRole("link", { name: /^(Start work|Keep working)$/ })).toBeVisible();
  await page.goto(`/bench/${ticket.id}`);
  await expect(page.locator(".bench-step h1")).toBeVisible();
  await server.kill();
  for (const path of ["/", `/tickets/${ticket.id}`, `/bench/${ticket.id}`]) {
    await page.goto(path);
    await expect(page.locator("#answer h1").first()).toBeVisible();
    await expect(page.getByText("The shop's server does not answer. Work goes on")).toBeVisible();
  }
  await expect(page.getByText(/What you see was read /)).toBeVisible();
  const seen = page.getByRole("button", { name: "Got it" });
  const sign = page.getByRole("button", { name: /^Sign [A-Z]/ });
  await expect(sign).toBeVisible();
  if (await seen.isVisible()) await seen.click();
  await sign.click();
  // The signature, and before it that the cautions were read.
  const waits = page.getByText(/^[12] things? waits? to be sent to the shop\.$/);
  await expect(waits.first()).toBeVisible();
  await page.reload();
  await expect(waits.first()).toBeVisible();
  await back();
  await expect(waits).toHaveCount(0);
  await expect(page.getByText("The shop's server does not answer.")).toHaveCount(0);
  const { items } = await (await context.request.get(`/api/stages-done?ticketId=${ticket.id}`)).json();
  const signed = items.filter(({ signs }: { signs: boolean }) => signs);
  expect(signed.map(({ stageId }: { stageId: string }) => stageId)).toEqual([ticket.stages[0].id]);
});

test("the plan is opened and worked out while the server is dead", async () => {
  test.setTimeout(120_000);
  const page = await keptPage();
  await server.kill();
  await page.goto("/plan");
  await finished(page);
  await expect(page.locator(".candidates tbody tr").first()).toBeVisible();
});

test("a finish is decided and a ticket moved on while the server is dead: both stand on this screen, and reach the shop in order", async () => {
  test.setTimeout(120_000);
  const page = await keptPage();
  const ticket = await openTicket(context.request);
  await page.goto(`/tickets/${ticket.id}`);
  await openWish(page);
  await server.kill();
  await page.getByLabel("Finish wanted").selectOption("4000");
  await expect(page.getByText("1 thing waits to be sent to the shop.")).toBeVisible();
  await expect(page.getByLabel("Finish wanted")).toHaveValue("4000");
  await page.getByRole("button", { name: "in work", exact: true }).click();
  await expect(page.getByText("2 things wait to be sent to the shop.")).toBeVisible();
  await page.reload();
  await openWish(page);
  await expect(page.getByLabel("Finish wanted")).toHaveValue("4000");
  await expect(page.locator(".state-track [aria-current=step]")).toContainText("In work");
  await back();
  await expect(page.getByText(/to be sent to the shop/)).toHaveCount(0);
  expect(await nowOf(ticket.id)).toMatchObject({ finishAfter: "4000", state: "in work", version: ticket.version + 2 });
});

test("somebody else changed the ticket before what waited could be sent: both versions stay, and one of them is chosen", async () => {
  test.setTimeout(120_000);
  const page = await keptPage();
  const ticket = await openTicket(context.request);
  await page.goto(`/tickets/${ticket.id}`);
  await openWish(page);
  await server.kill();
  await page.getByLabel("Finish wanted").selectOption("4000");
  await expect(page.getByText("1 thing waits to be sent to the shop.")).toBeVisible();
  // The other counter is quicker: this browser is not told before it has been.
  await context.setOffline(true);
  await back();
  const other = await context.request.patch(`/api/tickets/${ticket.id}`, {
    data: { finishAfter: "1000" },
    headers: { "If-Match": `"${ticket.version}"` },
  });
  expect(other.status()).toBe(200);
  await context.setOffline(false);
  await expect(page.getByText("Finish wanted: written here 4000; in the shop 1000")).toBeVisible();
  expect((await nowOf(ticket.id)).finishAfter).toBe("1000");
  await page.getByRole("button", { name: "Send mine all the same" }).click();
  await expect(page.getByText("written here 4000")).toHaveCount(0);
  await expect.poll(async () => (await nowOf(ticket.id)).finishAfter).toBe("4000");
});

test("it can be installed: a manifest with pictures that are there, and a worker that keeps every file of the page", async () => {
  const page = await keptPage();
  const manifest = await (await context.request.get("/manifest.webmanifest")).json();
  for (const { src, type } of manifest.icons) {
    const icon = await context.request.get(src);
    expect([icon.status(), icon.headers()["content-type"]]).toEqual([200, type]);
  }
  const missing = await page.evaluate(async () => {
    const kept = (await caches.keys()).find((name) => name.startsWith("gritwright-page-"));
    const cache = await caches.open(kept ?? "");
    const wanted = performance.getEntriesByType("resource").map(({ name }) => new URL(name).pathname);
    const files = wanted.filter((path) => path.startsWith("/assets/"));
    const found = await Promise.all(files.map(async (path) => ((await cache.match(path)) === undefined ? path : null)));
    return { files: files.length, missing: found.filter((path) => path !== null) };
  });
  expect(missing.files).toBeGreaterThan(5);
  expect(missing.missing).toEqual([]);
});

test("under another name without encryption it says what is missing there and why", async () => {
  // The server itself refuses other names; somebody between passes the page on, as a network that does so would.
  await context.route("http://shop.example/**", async (route) => {
    const url = new URL(route.request().url());
    const response = await route.fetch({
      url: `${server.address}${url.pathname}${url.search}`,
      headers: { host: new URL(server.address).host },
    });
    await route.fulfill({ response });
  });
  const page = await context.newPage();
  await page.goto("http://shop.example/plan");
  await expect(page.getByText("This address is neither this machine itself nor encrypted")).toBeVisible();
  await page.getByRole("button", { name: "Understood" }).click();
  await expect(page.getByText("This address is neither this machine")).toHaveCount(0);
  // What the page still asks for when the test ends is nobody's fault.
  await context.unrouteAll({ behavior: "ignoreErrors" });
});
