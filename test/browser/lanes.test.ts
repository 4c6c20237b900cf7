import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { AxeBuilder } from "@axe-core/playwright";
import { type APIRequestContext, expect, test } from "@playwright/test";
import { complaints } from "./room.ts";
import { ownServer } from "./shopServer.ts";

/* Houses, lanes and patterns, and the shots that are seen on them. */

/** The lane on which most shots were noted, and its house. */
async function busyLane(request: APIRequestContext): Promise<{ readonly laneId: string; readonly houseId: string }> {
  const { items } = await (await request.get("/api/shot-notes?limit=200")).json();
  const counts = new Map<string, number>();
  for (const { laneId } of items) counts.set(laneId, (counts.get(laneId) ?? 0) + 1);
  const [laneId] = [...counts].sort((a, b) => b[1] - a[1])[0];
  const { houseId } = await (await request.get(`/api/lanes/${laneId}`)).json();
  return { laneId, houseId };
}

test("a shot is noted in three taps; with a ball, boards and pins it takes more, and what does not fit is answered beside the field", async ({
  page,
  request,
}) => {
  const heard = complaints(page);
  const { laneId } = await busyLane(request);
  await page.goto(`/lanes/${laneId}`);
  await page.getByText("late", { exact: true }).click();
  await page.getByText("light", { exact: true }).click();
  await page.getByRole("button", { name: "10", exact: true }).click();
  await expect(page.getByText("Kept.", { exact: true })).toBeVisible();
  const newest = async () => (await (await request.get(`/api/shot-notes?laneId=${laneId}&limit=1`)).json()).items[0];
  expect(await newest()).toMatchObject({ turned: "late", arrived: "light", leave: [10], boards: [] });

  await page.getByText("early", { exact: true }).click();
  await page.getByLabel("pin 4").check({ force: true });
  await page.getByLabel("pin 7").check({ force: true });
  await page.getByRole("button", { name: /^More/ }).click();
  await page.getByLabel("Board at the arrows").fill("12,5");
  await page.getByLabel("Board at the pins").fill("99");
  await expect(page.getByText(/5 ≤ x ≤ 45/)).toBeVisible();
  await expect(page.getByRole("button", { name: "Keep: 4-7 left" })).toBeDisabled();
  await page.reload();
  await page.getByRole("button", { name: /^More/ }).click();
  await page.getByLabel("Board at the pins").fill("19");
  await page.getByRole("button", { name: "Keep: 4-7 left" }).click();
  await expect(page.getByText("Kept.", { exact: true })).toBeVisible();
  expect(await newest()).toMatchObject({
    turned: "early",
    arrived: null,
    leave: [4, 7],
    boards: [
      { atFt: 15, board: 12.5 },
      { atFt: 60, board: 19 },
    ],
  });
  expect(heard).toEqual([]);
});

test("three corner pins and a strike say that the ball comes in light or flat; a shot that was noted wrongly is taken out", async ({
  page,
  request,
}) => {
  const { houseId } = await busyLane(request);
  const made = await request.post("/api/lanes", { data: { houseId, number: 187 } });
  const { id } = await made.json();
  await page.goto(`/lanes/${id}`);
  await expect(page.getByText("No shot is noted on this lane yet.")).toBeVisible();
  for (const left of ["10", "10", "10", "Strike"]) {
    await page.getByRole("button", { name: left, exact: true }).click();
    await expect(page.getByText("Kept.", { exact: true })).toBeVisible();
  }
  await expect(page.getByText("4 shots with what they left.")).toBeVisible();
  await expect(page.getByRole("img", { name: "What is left standing" })).toBeVisible();
  await expect(page.getByText("10, corner pin")).toBeVisible();
  await expect(page.getByText(/^Its mean hit: board/)).toBeVisible();
  await page
    .getByRole("button", { name: /^Take out the shot of/ })
    .first()
    .click();
  await expect(page.getByRole("button", { name: /^Take out the shot of/ })).toHaveCount(3);
});

test("an oil sheet is written row by row and drawn; its rows' total stands beside what the sheet states", async ({ page, request }) => {
  const { houseId } = await busyLane(request);
  await page.goto(`/patterns/new?house=${houseId}`);
  await page.getByLabel("Name of the pattern").fill("Tuesday sheet");
  await page.getByText("oil sheet", { exact: true }).click();
  await page.getByLabel("Length, ft").fill("40");
  await page.getByLabel("Total the sheet states, mL").fill("20");
  await page.getByLabel("From board").fill("2");
  await page.getByLabel("To board").fill("1");
  await page.getByLabel("µL a board").fill("40");
  await page.getByLabel("From ft").fill("0");
  await page.getByLabel("To ft").fill("20");
  await expect(page.getByText("2 ≤ x ≤ 39, at least fromBoard")).toBeVisible();
  await page.getByLabel("To board").fill("38");
  await page.getByRole("button", { name: "Another row" }).click();
  const second = page.getByRole("group", { name: "Row 2" });
  await expect(second.getByLabel("From ft")).toHaveValue("20");
  await second.getByLabel("From board").fill("11");
  await second.getByLabel("To board").fill("29");
  await second.getByLabel("Times over").fill("8");
  await second.getByLabel("µL a board").fill("40");
  await second.getByLabel("To ft").fill("40");
  // 37 boards × 40 µL + 19 boards × 40 µL × 8 = 7.56 mL, by hand; 20 stated.
  await expect(page.getByText("7.56 mL").first()).toBeVisible();
  await expect(page.getByText("20.00 mL, 62.2 % apart")).toBeVisible();
  await expect(page.getByRole("img", { name: "Tuesday sheet" })).toBeVisible();
  await page.getByRole("button", { name: "Keep the pattern" }).click();
  await page.waitForURL(/\/patterns\/[0-9a-f-]{36}/);
  await expect(page.getByRole("group", { name: "Row 2" }).getByLabel("To board")).toHaveValue("29");
  const kept = await (await request.get(`/api/patterns/${new URL(page.url()).pathname.split("/")[2]}`)).json();
  expect([kept.name, kept.oil.oilSheet.passes.length, kept.houseId]).toEqual(["Tuesday sheet", 2, houseId]);
});

test("measured film is written place by place; a line that does not fit is named", async ({ page, request }) => {
  const { houseId } = await busyLane(request);
  await page.goto(`/patterns/new?house=${houseId}`);
  await page.getByLabel("Name of the pattern").fill("Tapes of Tuesday");
  await page.getByText("measured film", { exact: true }).click();
  await page.getByLabel("Length, ft").fill("40");
  await page.getByLabel("Board, ft, film: one place a line").fill("20 15 4,2\n5 15 thick");
  await expect(page.getByText(/^line 2: three figures/)).toBeVisible();
  await page.getByLabel("Board, ft, film: one place a line").fill("20 15 4,2\n5 15 0.6");
  await page.getByRole("button", { name: "Keep the pattern" }).click();
  await page.waitForURL(/\/patterns\/[0-9a-f-]{36}/);
  const kept = await (await request.get(`/api/patterns/${new URL(page.url()).pathname.split("/")[2]}`)).json();
  expect(kept.oil.filmPoints.points).toEqual([
    { board: 20, ft: 15, film: 4.2 },
    { board: 5, ft: 15, film: 0.6 },
  ]);
});

test("a house and its lanes are written down; a number that is there already is answered", async ({ page }) => {
  await page.goto("/lanes");
  await page.getByLabel("Name of the house").fill("Cinder Hollow Lanes");
  await page.getByRole("button", { name: "Add the house" }).click();
  const house = page.getByRole("region", { name: "Cinder Hollow Lanes" });
  await house.getByLabel("Number of the lane").fill("7");
  await house.getByRole("button", { name: "Add the lane" }).click();
  await expect(house.getByRole("link", { name: "Lane 7" })).toBeVisible();
  await house.getByLabel("Number of the lane").fill("7");
  await expect(house.getByText("a whole number from 1 to 200, not yet there")).toBeVisible();
  await house.getByRole("link", { name: "Lane 7" }).click();
  await expect(page.getByRole("heading", { name: "Lane 7, Cinder Hollow Lanes" })).toBeVisible();
});

test("a shot noted while the server is dead waits, is said to wait, and is kept later, once", async ({ browser }) => {
  test.setTimeout(120_000);
  const data = mkdtempSync(join(tmpdir(), "gritwright-shot-"));
  let server = await ownServer(data, 0);
  const context = await browser.newContext({ baseURL: server.address });
  try {
    const page = await context.newPage();
    const { laneId } = await busyLane(context.request);
    const count = async () => (await (await context.request.get(`/api/shot-notes?laneId=${laneId}&limit=200`)).json()).items.length;
    const before = await count();
    await page.goto(`/lanes/${laneId}`);
    await expect(page.getByRole("button", { name: "Strike", exact: true })).toBeVisible();
    await server.kill();
    await page.getByRole("button", { name: "Strike", exact: true }).click();
    await expect(page.getByText("Waits to be sent.", { exact: true })).toBeVisible();
    server = await ownServer(data, Number(new URL(server.address).port));
    await expect(page.getByText("Kept.", { exact: true })).toBeVisible();
    expect(await count()).toBe(before + 1);
  } finally {
    await context.close();
    await server.kill();
    rmSync(data, { recursive: true, force: true });
  }
});

for (const look of ["paper", "bench"] as const) {
  test(`lanes, look ${look}: nothing for axe to find, nothing runs out of the page`, async ({ page, request }) => {
    test.setTimeout(120_000);
    await page.addInitScript((chosen) => localStorage.setItem("gritwright.look", chosen), look);
    const { laneId, houseId } = await busyLane(request);
    const { items } = await (await request.get(`/api/patterns?houseId=${houseId}`)).json();
    for (const path of ["/lanes", `/lanes/${laneId}`, `/patterns/${items[0].id}`, "/patterns/new"]) {
      for (const width of [360, 820, 1440]) {
        await page.setViewportSize({ width, height: 900 });
        await page.goto(path);
        await expect(page.locator("#answer h1").first()).toBeVisible();
        if (path !== "/lanes") await expect(page.locator(".lane-chart svg")).toBeVisible();
        expect(await page.evaluate(() => document.documentElement.scrollWidth), `${path} ${width}`).toBeLessThanOrEqual(width);
      }
      const { violations } = await new AxeBuilder({ page }).analyze();
      expect(violations.map((v) => `${path} ${v.id}: ${v.nodes.map((n) => n.target.join(" ")).join(", ")}`)).toEqual([]);
    }
  });
}
