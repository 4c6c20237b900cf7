import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { AxeBuilder } from "@axe-core/playwright";
import { type APIRequestContext, expect, type Page, test } from "@playwright/test";
import { complaints } from "./room.ts";
import { ownServer } from "./shopServer.ts";

/* Express work beside the lane, on a phone. */

test.use({ viewport: { width: 360, height: 740 }, hasTouch: true });

interface Found {
  readonly id: string;
  readonly name: string;
  readonly serial: string;
}

async function soundBall(request: APIRequestContext): Promise<Found> {
  const { items } = await (await request.get("/api/balls?limit=200")).json();
  const sound = items.find(
    (ball: Found & { state: string; found: readonly { what: string }[] }) =>
      ball.serial !== null && ball.state === "in use" && !ball.found.some(({ what }) => what === "crack" || what === "hollow sound"),
  );
  if (sound === undefined) throw new Error("The invented shop has no sound ball with a serial number.");
  return sound;
}

async function choose(page: Page, ball: Found, number: number): Promise<void> {
  await page.goto("/lane-side");
  await page.getByLabel("Serial number, name or telephone").fill(ball.serial);
  await page.getByRole("button", { name: ball.serial }).tap();
  await page.getByText(String(number), { exact: true }).tap();
}

test("this ball, that number, by hand, dry, done: signed, in the history, handed back, and out of the pad's uses", async ({
  page,
  request,
}) => {
  const heard = complaints(page);
  const ball = await soundBall(request);
  const pads = (await (await request.get("/api/stock-items?limit=200&kind=pad")).json()).items;
  const pad = pads.find(({ number, unit }: { number: number; unit: string }) => number === 2000 && unit === "uses");
  await choose(page, ball, 2000);
  await expect(page.getByText("else with extraction and a respirator")).toBeVisible();
  await page.reload();
  await page.getByRole("button", { name: /^Done: sign/ }).tap();
  await expect(page.getByText("Signed and kept.")).toBeVisible();
  const { last } = await (await request.get(`/api/balls/${ball.id}/last-time`)).json();
  expect([last.ticket.state, last.ticket.finishAfter, last.stagesDone[0].way]).toEqual(["collected", "2000", "hand, dry"]);
  if (pad === undefined) throw new Error("The invented shop keeps no pads of 2000 by uses.");
  expect((await (await request.get(`/api/stock-items/${pad.id}`)).json()).quantity).toBe(pad.quantity - 1);
  expect(heard).toEqual([]);
});

test("a ball that the records do not have is taken by its name; one with a crack is not worked", async ({ page, request }) => {
  await page.goto("/lane-side");
  await page.getByText("Not in the records, or no network").tap();
  await page.getByLabel("What the ball is called").fill("Flint Wagtail");
  await page.getByRole("button", { name: "Work on this one" }).tap();
  await page.getByText("1000", { exact: true }).tap();
  await page.getByText("wet", { exact: true }).tap();
  await page.getByRole("button", { name: /^Done: sign/ }).tap();
  await expect(page.getByText("Signed and kept.")).toBeVisible();
  const { balls } = await (await request.get("/api/search?words=Wagtail")).json();
  expect(balls.map(({ name }: Found) => name)).toEqual(["Flint Wagtail"]);
  await request.patch(`/api/balls/${balls[0].id}`, {
    data: { found: [{ at: "2026-05-31T17:40:00.000Z", what: "crack", note: "" }] },
    headers: { "If-Match": `"${balls[0].version}"` },
  });
  await page.reload();
  await page.getByLabel("Serial number, name or telephone").fill("Wagtail");
  await page.getByRole("button", { name: "Flint Wagtail" }).tap();
  await expect(page.getByText("Work on this ball is stopped")).toBeVisible();
  await expect(page.getByRole("button", { name: /^Done: sign/ })).toHaveCount(0);
});

test("the server dies before it is signed: it says that it waits, and is sent later, once", async ({ browser }) => {
  test.setTimeout(120_000);
  const data = mkdtempSync(join(tmpdir(), "gritwright-lane-"));
  let server = await ownServer(data, 0);
  const context = await browser.newContext({ baseURL: server.address, hasTouch: true, viewport: { width: 360, height: 740 } });
  try {
    const page = await context.newPage();
    const ball = await soundBall(context.request);
    const before = (await (await context.request.get(`/api/tickets?ballId=${ball.id}&limit=200`)).json()).items.length;
    await choose(page, ball, 500);
    await expect(page.getByRole("button", { name: /^Done: sign [A-Z]/ })).toBeEnabled();
    await server.kill();
    await page.getByRole("button", { name: /^Done: sign/ }).tap();
    await expect(page.getByText("Signed. The shop cannot be reached")).toBeVisible();
    server = await ownServer(data, Number(new URL(server.address).port));
    await expect(page.getByText("Signed and kept.")).toBeVisible();
    const { items } = await (await context.request.get(`/api/tickets?ballId=${ball.id}&limit=200`)).json();
    expect(items).toHaveLength(before + 1);
  } finally {
    await context.close();
    await server.kill();
    rmSync(data, { recursive: true, force: true });
  }
});

for (const look of ["paper", "bench"] as const) {
  test(`nothing for axe to find beside the lane, look ${look}, and nothing runs out of the page`, async ({ page, request }) => {
    await page.addInitScript((chosen) => localStorage.setItem("gritwright.look", chosen), look);
    await choose(page, await soundBall(request), 3000);
    await expect(page.getByRole("button", { name: /^Done: sign/ })).toBeVisible();
    const { violations } = await new AxeBuilder({ page }).analyze();
    expect(violations.map((v) => `${v.id}: ${v.nodes.map((n) => n.target.join(" ")).join(", ")}`)).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360);
  });
}
