import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { AxeBuilder } from "@axe-core/playwright";
import { type APIRequestContext, expect, test } from "@playwright/test";
import type { ChildServer } from "../../tools/childServer.ts";
import { complaints } from "./room.ts";
import { ownServer } from "./shopServer.ts";

/* Readings of a ball, and the plan that a ticket asks for, over a shop of these tests' own. */

let data = "";
let shop: ChildServer;

test.beforeAll(async () => {
  data = mkdtempSync(join(tmpdir(), "gritwright-measure-"));
  shop = await ownServer(data, 0);
});

test.afterAll(async () => {
  await shop.kill();
  rmSync(data, { recursive: true, force: true });
});

interface KnownTicket {
  readonly id: string;
  readonly ballId: string;
}

/** A new ticket of a ball that is asked to strike: which balls wait in the invented shop is chance. */
async function openTicket(request: APIRequestContext): Promise<KnownTicket> {
  const { items } = await (await request.get(`${shop.address}/api/balls?limit=200`)).json();
  const ball = items.find(
    (one: { job: string; bowlerId: string | null; state: string }) =>
      one.job === "strike" && one.bowlerId !== null && one.state === "in use",
  );
  if (ball === undefined) throw new Error("The invented shop has no ball to plan for.");
  const receivedAt = new Date().toISOString();
  const visit = { bowlerId: ball.bowlerId, arrivedAt: receivedAt, currency: "USD" };
  const { id: visitId } = await (await request.post(`${shop.address}/api/visits`, { data: visit })).json();
  const ticket = { visitId, ballId: ball.id, bowlerId: ball.bowlerId, receivedAt };
  return (await request.post(`${shop.address}/api/tickets`, { data: ticket })).json();
}

async function kept(request: APIRequestContext, ballId: string) {
  const { items } = await (await request.get(`${shop.address}/api/readings?ballId=${ballId}&limit=200`)).json();
  return items as { id: string; place: string; how: string; comparison: string | null; raUm: number | null; ticketId: string | null }[];
}

for (const look of ["paper", "bench"] as const) {
  test(`measuring, look ${look}: nothing for axe to find, nothing runs out at 360 px`, async ({ page, request }) => {
    const heard = complaints(page);
    const { id, ballId } = await openTicket(request);
    await page.addInitScript((chosen) => localStorage.setItem("gritwright.look", chosen), look);
    await page.setViewportSize({ width: 360, height: 800 });
    await page.goto(`${shop.address}/measure?ball=${ballId}&ticket=${id}`);
    for (const way of ["by sheen", "with a tester"]) {
      await page.getByText(way, { exact: true }).click();
      await expect(page.locator(".side")).toHaveCount(6);
      if (way === "with a tester") {
        await page.getByLabel("grip, Ra", { exact: false }).first().fill("20 21");
        await page.getByLabel("below the thumb").fill("30");
        await expect(page.getByText("compared only with each other")).toBeVisible();
        await page.getByLabel("Compared with the finish").selectOption("1000");
        await expect(page.getByRole("cell", { name: /(too dull|too smooth|as wanted)$/ })).toHaveCount(2);
      }
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360);
      const { violations } = await new AxeBuilder({ page }).analyze();
      expect(violations.map((v) => `${v.id}: ${v.nodes.map((n) => n.target.join(" ")).join(", ")}`)).toEqual([]);
    }
    expect(heard).toEqual([]);
  });
}

test("by sheen, with the keyboard: Enter walks from side to side to what keeps them, and they are kept once", async ({ page, request }) => {
  const { id, ballId } = await openTicket(request);
  const before = await kept(request, ballId);
  await page.goto(`${shop.address}/measure?ball=${ballId}&ticket=${id}`);
  await page.locator("fieldset.side input").first().focus();
  for (let side = 0; side < 6; side += 1) {
    await page.keyboard.press("Space");
    if (side === 3) await page.keyboard.press("ArrowRight");
    await page.keyboard.press("Enter");
  }
  await expect(page.getByText("The sides do not agree.")).toBeVisible();
  const keep = page.getByRole("button", { name: "Keep 6 readings" });
  await expect(keep).toBeFocused();
  await page.keyboard.press("Enter");
  await expect(page.getByText("6 readings are kept with the ball.")).toBeVisible();
  await expect(page.getByRole("button", { name: "Keep 0 readings" })).toBeDisabled();
  const known = new Set(before.map((one) => one.id));
  const fresh = (await kept(request, ballId)).filter((one) => !known.has(one.id));
  expect(fresh.map(({ place, how, comparison, ticketId }) => [place, how, comparison, ticketId]).toSorted()).toEqual(
    ["grip", "opposite", "left", "right", "fingers", "thumb"]
      .map((place) => [place, "reference ball", place === "right" ? "the same" : "duller", id])
      .toSorted(),
  );
});

test("with a tester: what is no number is answered and stays; the rest is kept, in the shop's unit; a reload loses nothing", async ({
  page,
  request,
}) => {
  const { ballId } = await openTicket(request);
  const before = new Set((await kept(request, ballId)).map((one) => one.id));
  await page.goto(`${shop.address}/measure?ball=${ballId}`);
  await page.getByText("with a tester", { exact: true }).click();
  const fields = page.locator(".side input");
  await fields.nth(0).fill("20 22,5");
  await fields.nth(1).fill("about 20");
  await fields.nth(2).fill("40");
  await expect(fields.nth(1)).toHaveAccessibleDescription(
    "“about 20” does not fit. Allowed: numbers above 0, at most 1000 µin, with spaces between.",
  );
  await page.reload();
  await expect(fields.nth(0)).toHaveValue("20 22,5");
  await expect(page.locator(".sides-chart svg")).toBeVisible();
  await page.getByRole("button", { name: "Keep 3 readings" }).click();
  await expect(page.getByText("3 readings are kept with the ball.")).toBeVisible();
  await expect(fields.nth(0)).toHaveValue("");
  await expect(fields.nth(1)).toHaveValue("about 20");
  const fresh = (await kept(request, ballId)).filter((one) => !before.has(one.id));
  // 1 µin is 0.0254 µm by definition of the inch.
  expect(fresh.map(({ raUm }) => raUm?.toFixed(4)).toSorted()).toEqual(["0.5080", "0.5715", "1.0160"]);
});

test("without a ball in the address one is found by its number", async ({ page, request }) => {
  const { items } = await (await request.get(`${shop.address}/api/balls?limit=200`)).json();
  const ball = items.find((one: { serial: string | null }) => one.serial !== null);
  await page.goto(`${shop.address}/measure`);
  await page.getByLabel("Serial number, name or telephone").fill(ball.serial);
  await page.getByRole("link", { name: ball.serial }).click();
  await expect(page.getByRole("heading", { name: `Measure: ${ball.name}` })).toBeVisible();
});

test("a ticket's plan opens with its ball and bowler; one press takes the finish and its work back to the ticket", async ({
  page,
  request,
}) => {
  const heard = complaints(page);
  const { id, ballId } = await openTicket(request);
  const ball = await (await request.get(`${shop.address}/api/balls/${ballId}`)).json();
  await page.goto(`${shop.address}/tickets/${id}`);
  await page.getByRole("link", { name: "Plan the finish" }).click();
  await expect(page.getByText(/^Planned for/)).toContainText(ball.name);
  await expect(page.locator("#answer")).toHaveAttribute("data-status", "done", { timeout: 40_000 });
  const { violations } = await new AxeBuilder({ page }).analyze();
  expect(violations.map((v) => v.id)).toEqual([]);
  const finish = await page.getByLabel("Finish for the ticket", { exact: true }).inputValue();
  await expect(page.locator(".pick-sentence")).toContainText(finish);
  await page.getByRole("button", { name: "Take this finish for the ticket" }).click();
  await page.waitForURL(`**/tickets/${id}`);
  await expect(page.getByLabel("Finish wanted")).toHaveValue(finish);
  const ticket = await (await request.get(`${shop.address}/api/tickets/${id}`)).json();
  expect(ticket.finishAfter).toBe(finish);
  expect(ticket.stages.length).toBeGreaterThan(1);
  expect(heard).toEqual([]);
  // The plan without a ticket is as it was.
  await page.goto(`${shop.address}/plan`);
  await expect(page.getByLabel("Name").first()).toHaveValue("A. Bowler");
  await expect(page.getByRole("button", { name: "Take this finish" })).toHaveCount(0);
});

test("readings taken while the server is away wait, are said to wait, and are with the shop once it is back", async ({ page, request }) => {
  const { id, ballId } = await openTicket(request);
  const before = new Set((await kept(request, ballId)).map((one) => one.id));
  await page.goto(`${shop.address}/measure?ball=${ballId}&ticket=${id}`);
  await expect(page.locator("fieldset.side")).toHaveCount(6);
  await shop.kill();
  for (const side of [0, 1]) await page.locator("fieldset.side").nth(side).getByText("smoother").click();
  await page.getByRole("button", { name: "Keep 2 readings" }).click();
  await expect(page.getByRole("region", { name: "Not with the shop yet" })).toBeVisible();
  await expect(page.getByText("are kept with the ball")).toHaveCount(0);
  shop = await ownServer(data, Number(new URL(shop.address).port));
  await expect(page.getByText("2 readings are kept with the ball.")).toBeVisible({ timeout: 20_000 });
  const fresh = (await kept(request, ballId)).filter((one) => !before.has(one.id));
  expect(fresh.map(({ place, comparison }) => [place, comparison]).toSorted()).toEqual([
    ["grip", "smoother"],
    ["opposite", "smoother"],
  ]);
});

test("a tester's file is opened, drawn and read, its cut-off changed, and kept with the ball as file and reading; what is no such file is answered", async ({
  page,
  request,
}) => {
  const { items } = await (await request.get("/api/balls?limit=1")).json();
  const ballId = items[0].id;
  await page.goto(`/measure?ball=${ballId}`);
  const files = page.locator("input[type=file]");
  await files.setInputFiles({ name: "letter.csv", mimeType: "text/csv", buffer: Buffer.from("dear shop,\nno figures here") });
  await expect(page.getByRole("alert")).toBeVisible();
  await files.setInputFiles(join(import.meta.dirname, "..", "..", "examples", "profile-1000-pad.csv"));
  await expect(page.getByRole("img", { name: "Profile" })).toBeVisible();
  // As `gritwright profile examples/profile-1000-pad.csv --form arc` reads it; test/cli holds that to the engine.
  await expect(page.getByText("cut-off 0.80 mm (by the standard's table)")).toBeVisible();
  const ra = async () => Number.parseFloat((await page.locator(".facts div").filter({ hasText: /^Ra/ }).locator("dd").textContent()) ?? "");
  const usual = await ra();
  expect(usual).toBeGreaterThan(0.1);
  await page.getByRole("combobox", { name: "Cut-off" }).selectOption("0.25");
  await expect(page.getByText("cut-off 0.25 mm (as stated)")).toBeVisible();
  expect(await ra()).toBeLessThan(usual);
  await page.getByLabel("Where it was taken").selectOption("track");
  await page.getByRole("button", { name: "Keep file and reading with the ball" }).click();
  await expect(page.getByText("profile-1000-pad.csv is kept with the ball.")).toBeVisible();
  const kept = (await (await request.get(`/api/profile-files?ballId=${ballId}`)).json()).items[0];
  const reading = (await (await request.get(`/api/readings?ballId=${ballId}&limit=1`)).json()).items[0];
  expect(kept.name).toBe("profile-1000-pad.csv");
  expect(reading).toMatchObject({ profileFileId: kept.id, place: "track", how: "tester" });
  expect(reading.raUm).toBeLessThan(usual);
});
