import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test } from "@playwright/test";
import { ownServer } from "./shopServer.ts";

test("where the server takes no more pages that listen, the page asks for the queue instead", async ({ page, request }) => {
  await page.route("**/api/queue/events", (route) => route.fulfill({ status: 503, body: "" }));
  await page.goto("/");
  const { items } = await (await request.get("/api/queue")).json();
  await expect(page.getByText(items[0].ballName).first()).toBeVisible();
  const path = `/api/balls/${items[0].ticket.ballId}`;
  const { version } = await (await request.get(path)).json();
  const changed = await request.patch(path, { data: { name: "Renamed elsewhere" }, headers: { "If-Match": `"${version}"` } });
  expect(changed.status()).toBe(200);
  await expect(page.getByText("Renamed elsewhere").first()).toBeVisible();
});

for (const [room, serviceWorkers] of [
  ["Today", "allow"],
  ["Today", "block"],
  ["Stock", "allow"],
] as const)
  test(`whoever only looks at ${room} is told that the server has gone, and that it is back; service workers: ${serviceWorkers}`, async ({
    browser,
  }) => {
    test.setTimeout(120_000);
    const data = mkdtempSync(join(tmpdir(), "gritwright-idle-"));
    const first = await ownServer(data, 0);
    const context = await browser.newContext({ serviceWorkers });
    const page = await context.newPage();
    await page.goto(`${first.address}${room === "Today" ? "/" : "/stock"}`);
    await expect(page.getByRole("heading", { name: room })).toBeVisible();
    if (serviceWorkers === "allow") await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
    await first.kill();
    await expect(page.getByText("The shop's server does not answer.")).toBeVisible();
    const second = await ownServer(data, Number(new URL(first.address).port));
    await expect(page.getByText("The shop's server answers again")).toBeVisible();
    await context.close();
    await second.kill();
    rmSync(data, { recursive: true, force: true });
  });
