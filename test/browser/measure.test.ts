import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { AxeBuilder } from "@axe-core/playwright";
import { type APIRequestContext, expect, type Page, test } from "@playwright/test";
import type { ChildServer } from "../../tools/childServer.ts";
import { complaints } from "./room.ts";
import { ownServer } from "./shopServer.ts";
import { signStages } from "./signing.ts";

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

async function currentFinish(request: APIRequestContext, ballId: string): Promise<string> {
  const { surface, boxFinish } = await (await request.get(`${shop.address}/api/balls/${ballId}`)).json();
  const worked = (surface as { at: string; finish: string | null }[]).filter(({ finish }) => finish !== null);
  return worked.toSorted((a, b) => b.at.localeCompare(a.at))[0]?.finish ?? boxFinish;
}

/** Types one place's readings and goes on. */
async function reads(page: Page, figures: string): Promise<void> {
  await page.locator(".tester-field input").fill(figures);
  await page.keyboard.press("Enter");
}

for (const look of ["paper", "bench"] as const) {
  test(`measuring, look ${look}: nothing for axe to find, nothing runs out at 360 px`, async ({ page, request }) => {
    const heard = complaints(page);
    const { id, ballId } = await openTicket(request);
    await page.addInitScript((chosen) => localStorage.setItem("gritwright.look", chosen), look);
    await page.setViewportSize({ width: 360, height: 800 });
    await page.goto(`${shop.address}/measure?ball=${ballId}&ticket=${id}`);
    for (const way of ["By sheen", "Tester"]) {
      await page.getByText(way, { exact: true }).click();
      await expect(page.locator(".measure-spot")).toHaveCount(6);
      if (way === "Tester") for (const figures of ["20 21", "30"]) await reads(page, figures);
      await expect(page.locator(".verdict-bar")).toBeInViewport();
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360);
      const { violations } = await new AxeBuilder({ page }).analyze();
      expect(violations.map((v) => `${v.id}: ${v.nodes.map((n) => n.target.join(" ")).join(", ")}`)).toEqual([]);
    }
    expect(heard).toEqual([]);
  });
}

test("by sheen: one key a side, saved as it is pressed; the odd one is named; undo takes back the last alone", async ({
  page,
  request,
}) => {
  const { id, ballId } = await openTicket(request);
  const before = new Set((await kept(request, ballId)).map((one) => one.id));
  await page.goto(`${shop.address}/measure?ball=${ballId}&ticket=${id}`);
  await page.getByText("By sheen", { exact: true }).click();
  await expect(page.locator(".verdict-bar")).toContainText("Two more sides and I can tell.");
  for (const key of ["Same", "Same", "Same", "Same", "Same", "Smoother"])
    await page.getByRole("button", { name: key, exact: true }).click();
  await expect(page.locator(".verdict-bar")).toContainText("Opposite is smoother. The other five match each other.");
  await expect(page.locator(".verdict-bar")).toContainText("Saved, 6 of 6 sides.");
  const fresh = (await kept(request, ballId)).filter((one) => !before.has(one.id));
  expect(fresh.map(({ place, how, comparison, ticketId }) => [place, how, comparison, ticketId]).toSorted()).toEqual(
    ["grip", "opposite", "left", "right", "fingers", "thumb"]
      .map((place) => [place, "reference ball", place === "opposite" ? "smoother" : "the same", id])
      .toSorted(),
  );
  await page.getByRole("button", { name: "Undo opposite" }).click();
  await expect(page.locator(".verdict-bar")).toContainText("The five read so far match each other.");
  await page.reload();
  await expect(page.getByRole("button", { name: "opposite: not read yet" })).toBeVisible();
  // What was taken back stays in the log as taken back.
  const after = (await kept(request, ballId)).filter((one) => !before.has(one.id));
  expect(after).toHaveLength(7);
});

test("by sheen Enter walks the sides and the space bar presses a key; on a phone the verdict leaves the keys in view", async ({
  page,
  request,
}) => {
  await page.setViewportSize({ width: 360, height: 780 });
  const { id, ballId } = await openTicket(request);
  await page.goto(`${shop.address}/measure?ball=${ballId}&ticket=${id}`);
  await page.getByText("By sheen", { exact: true }).click();
  const heading = page.locator(".read-here h2");
  await expect(heading).toContainText("side 1 of 6");
  await page.getByRole("button", { name: "Same", exact: true }).focus();
  await page.keyboard.press("Enter");
  await expect(heading).toContainText("side 2 of 6");
  await expect(page.locator(".verdict-bar")).toContainText("Two more sides and I can tell.");
  await page.keyboard.press(" ");
  await expect(heading).toContainText("side 3 of 6");
  await page.keyboard.press("Enter");
  await expect(heading).toContainText("side 4 of 6");
  await page.keyboard.press(" ");
  await expect(page.locator(".verdict-bar")).toContainText("2 of 6 sides");
  const bar = await page.locator(".verdict-bar").boundingBox();
  // A quarter of the screen at the most is the verdict's: the rest is the ball's and the keys'.
  expect(bar?.height ?? 780).toBeLessThan(195);
  await page.getByRole("button", { name: "Smoother", exact: true }).focus();
  const key = await page.getByRole("button", { name: "Smoother", exact: true }).boundingBox();
  expect((key?.y ?? 780) + (key?.height ?? 0)).toBeLessThanOrEqual((bar?.y ?? 0) + 1);
});

test("words in the spots run neither off the page nor into one another, and the keys stay clear of the verdict", async ({
  page,
  request,
}) => {
  const { id, ballId } = await openTicket(request);
  await page.goto(`${shop.address}/measure?ball=${ballId}&ticket=${id}`);
  await page.getByText("By sheen", { exact: true }).click();
  for (let i = 0; i < 6; i += 1) await page.getByRole("button", { name: "Smoother", exact: true }).click();
  await expect(page.locator(".verdict-bar")).toContainText("Saved, 6 of 6 sides.");
  for (const [width, height] of [
    [360, 800],
    [820, 1180],
    [1440, 900],
  ]) {
    await page.setViewportSize({ width, height });
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
    const rings = await page
      .locator(".measure-balls .spot-ring")
      .evaluateAll((all) => all.map((one) => one.getBoundingClientRect().toJSON()));
    expect(rings).toHaveLength(6);
    for (const [i, one] of rings.entries())
      for (const other of rings.slice(i + 1))
        expect(
          one.right <= other.left || other.right <= one.left || one.bottom <= other.top || other.bottom <= one.top,
          `${width} px: two words apart`,
        ).toBe(true);
  }
  await page.setViewportSize({ width: 820, height: 1180 });
  await page.getByText("Tester", { exact: true }).click();
  const keys = await page.locator(".tester-keys").boundingBox();
  const verdict = await page.locator(".verdict-bar").boundingBox();
  expect((keys?.y ?? 0) + (keys?.height ?? 0)).toBeLessThanOrEqual(verdict?.y ?? 0);
});

test("with a tester: what can be no reading is said at the field; the rest is saved in the shop's unit; a reload loses nothing that was typed", async ({
  page,
  request,
}) => {
  const { ballId } = await openTicket(request);
  const before = new Set((await kept(request, ballId)).map((one) => one.id));
  await page.goto(`${shop.address}/measure?ball=${ballId}`);
  await page.getByText("Tester", { exact: true }).click();
  const field = page.locator(".tester-field input");
  await field.fill("about 20");
  await page.keyboard.press("Enter");
  await expect(field).toHaveAccessibleDescription("“about 20” can’t be a reading. Allowed: numbers above 0, up to 1000 µin.");
  await page.reload();
  await expect(field).toHaveValue("about 20");
  await field.fill("");
  // The keys in view type as the machine's do.
  for (const key of ["2", "0", "one more", "2", "2", ".", "5"])
    await page.locator(".tester-keys").getByRole("button", { name: key, exact: true }).click();
  await expect(field).toHaveValue("20 22.5");
  await expect(page.locator(".tester-mean")).toContainText("mean 21.3 µin");
  await page.getByRole("button", { name: "Next side" }).click();
  await expect(page.getByRole("button", { name: "grip: 21.3" })).toBeVisible();
  await expect(page.getByRole("heading", { name: /left/i })).toBeVisible();
  await expect(page.locator(".verdict-bar")).toContainText("One more side and I can tell. Saved, 1 of 6 sides.");
  const fresh = (await kept(request, ballId)).filter((one) => !before.has(one.id));
  // 1 µin is 0.0254 µm by definition of the inch.
  expect(fresh.map(({ raUm }) => raUm?.toFixed(4)).toSorted()).toEqual(["0.5080", "0.5715"]);
});

test("the odd side is named, also on another device, opens the guide at exactly that side with its seconds, and is read again", async ({
  page,
  request,
  browser,
}) => {
  test.setTimeout(120_000);
  const heard = complaints(page);
  await page.clock.install();
  const { id, ballId } = await openTicket(request);
  await page.goto(`${shop.address}/tickets/${id}`);
  await page.getByLabel("Finish wanted").selectOption("2000");
  await expect(page.locator("table.stages")).toBeVisible();
  await signStages(request, id, { at: shop.address, doneAt: new Date(Date.now() - 60_000).toISOString() });
  await page.goto(`${shop.address}/measure?ball=${ballId}&ticket=${id}`);
  await page.getByText("Tester", { exact: true }).click();
  for (const figures of ["12.8 12.5", "13.1 12.4", "12.4 12.6", "12 12.9", "12.5 12", "8.1 9.9"]) await reads(page, figures);
  const verdict = page.locator(".verdict-bar");
  await expect(verdict).toContainText("Opposite is too smooth. The other five match 2000.");
  const elsewhere = await browser.newPage();
  await elsewhere.goto(`${shop.address}/measure?ball=${ballId}&ticket=${id}`);
  await expect(elsewhere.locator(".verdict-bar")).toContainText("Opposite is too smooth. The other five match 2000.");
  await expect(elsewhere.getByRole("button", { name: "opposite: 9.0" })).toBeVisible();
  await elsewhere.close();
  const seconds = Number(/about (\d+) seconds/.exec((await verdict.textContent()) ?? "")?.[1]);
  expect(seconds).toBeGreaterThanOrEqual(5);
  await page.getByRole("button", { name: "Redo this side" }).click();
  await page.getByRole("button", { name: /It’s this ball/ }).click();
  const seen = page.getByRole("button", { name: /^(Seen|Got it)$/ });
  await expect(page.getByRole("timer").or(seen).first()).toBeVisible();
  if (await seen.isVisible()) await seen.click();
  await expect(page.locator(".bench-side")).toContainText("side 6 of 6");
  expect(Number(await page.getByRole("timer").textContent())).toBe(seconds);
  await page.locator(".bench-key.primary").click();
  await page.clock.runFor((seconds + 1) * 1000);
  await page.getByRole("button", { name: /^Sign / }).click();
  await page.waitForURL("**/measure?**side=opposite");
  await expect(page.getByRole("button", { name: "opposite: not read yet" })).toBeVisible();
  await page.goto(`${shop.address}/print/measures/${id}`);
  await expect(page.getByRole("heading", { name: "So far, still in work" })).toBeVisible();
  await expect(page.locator(".sheet")).toContainText("The five read so far match 2000.");
  await expect(page.locator(".sheet tbody tr")).toHaveCount(5);
  await page.goBack();
  await reads(page, "12.3 12.2");
  await expect(verdict).toContainText("All six match 2000.");
  // The check was signed before the side was worked again: it waits to be signed anew.
  await page.goto(`${shop.address}/bench/${id}`);
  await expect(page.locator("h1")).toContainText("Check all sides");
  expect(heard).toEqual([]);
});

test("a side may be left as it is, with the reason; the sheet says so, and prints the track as well", async ({ page, request }) => {
  const { id, ballId } = await openTicket(request);
  await page.goto(`${shop.address}/tickets/${id}`);
  await page.getByLabel("Finish wanted").selectOption("2000");
  await expect(page.locator("table.stages")).toBeVisible();
  await page.goto(`${shop.address}/measure?ball=${ballId}&ticket=${id}`);
  await page.getByText("Tester", { exact: true }).click();
  await page.getByText("After", { exact: true }).click();
  for (const figures of ["12.5 12.5", "12.5 12.5", "19 19.5"]) await reads(page, figures);
  await page.getByRole("button", { name: "Keep as is" }).click();
  await page.getByLabel("Why is it good enough?").fill("Scratch from the rack");
  await page.getByRole("button", { name: "Keep it" }).click();
  await expect(page.locator(".verdict-bar")).toContainText("Kept as is: Scratch from the rack");
  await page.getByRole("button", { name: "in the track" }).click();
  await page.locator(".tester-field input").fill("9");
  await page.getByRole("button", { name: "Save", exact: true }).click();
  await expect(page.getByRole("button", { name: "track: 9.0" })).toBeVisible();
  await page.goto(`${shop.address}/print/measures/${id}`);
  await expect(page.locator(".sheet tbody tr").last()).toContainText("track");
  await expect(page.locator(".sheet tbody tr").last()).toContainText("9.0");
  await expect(page.locator(".sheet")).toContainText("Kept as is: Scratch from the rack");
});

test("a reading by hand, in the track or beside it, moves the ball's fade", async ({ page, request }) => {
  const post = async (path: string, data: object) =>
    (await (await request.post(`${shop.address}${path}`, { data })).json()) as { id: string };
  const ball = await post("/api/balls", { name: "Slate Curlew", cover: "solid", boxFinish: "1000" });
  await page.goto(`${shop.address}/balls/${ball.id}`);
  await expect(page.getByText("No reading of this ball yet: its curve is the cover's.")).toBeVisible();
  await page.goto(`${shop.address}/measure?ball=${ball.id}`);
  await page.getByText("Tester", { exact: true }).click();
  for (const [place, figure] of [
    ["in the track", "12"],
    ["off the track", "17"],
  ]) {
    await page.getByRole("button", { name: place }).click();
    await page.locator(".tester-field input").fill(figure);
    await page.getByRole("button", { name: "Save", exact: true }).click();
    await expect(page.locator(".verdict-bar")).toContainText("Two more sides");
  }
  await expect(page.getByText("Track drawn where it usually is")).toBeVisible();
  await page.goto(`${shop.address}/balls/${ball.id}`);
  await expect(page.getByText("Moved by 2 readings of this ball.")).toBeVisible();
});

test("without a ball in the address one is found by its number", async ({ page, request }) => {
  const { items } = await (await request.get(`${shop.address}/api/balls?limit=200`)).json();
  const ball = items.find((one: { serial: string | null }) => one.serial !== null);
  await page.goto(`${shop.address}/measure`);
  await page.getByLabel("Serial number, name or telephone").fill(ball.serial);
  await page.getByRole("link", { name: ball.serial }).click();
  await expect(page.getByRole("heading", { name: `Measure ${ball.name}` })).toBeVisible();
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
  const choice = page.getByLabel("Finish for the ticket", { exact: true });
  const pick = await choice.inputValue();
  await expect(page.locator(".pick-sentence")).toContainText(pick);
  // Where no finish helps, the technician still may take one.
  const finish = pick === "" ? ((await choice.locator("option").nth(1).getAttribute("value")) ?? "") : pick;
  await choice.selectOption(finish);
  await page.getByRole("button", { name: "Take this finish for the ticket" }).click();
  await page.waitForURL(`**/tickets/${id}`);
  await expect(page.getByRole("heading", { level: 1 })).toContainText(`to ${finish}`);
  const ticket = await (await request.get(`${shop.address}/api/tickets/${id}`)).json();
  expect(ticket.finishAfter).toBe(finish);
  expect(ticket.stages.length).toBeGreaterThan(1);
  // What was said of it stays with the ticket, for the card: of this finish and no other.
  const said = ticket.predicted ?? { to: finish, from: await currentFinish(request, ballId), now: null };
  expect([said.to, said.from]).toEqual([finish, await currentFinish(request, ballId)]);
  expect(said.now === null || said.now.points.length > 5).toBe(true);
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
  await page.getByText("By sheen", { exact: true }).click();
  await expect(page.locator(".measure-spot")).toHaveCount(6);
  await shop.kill();
  for (const side of ["grip", "left"]) {
    await page.getByRole("button", { name: "Smoother", exact: true }).click();
    await expect(page.getByRole("button", { name: `${side}: Smoother` })).toBeVisible();
  }
  await expect(page.getByRole("region", { name: "Not with the shop yet" })).toBeVisible();
  await expect(page.locator(".verdict-bar")).toContainText("2 of 6 sides, waiting to be sent.");
  shop = await ownServer(data, Number(new URL(shop.address).port));
  await expect(page.locator(".verdict-bar")).toContainText("Saved, 2 of 6 sides.", { timeout: 20_000 });
  const fresh = (await kept(request, ballId)).filter((one) => !before.has(one.id));
  expect(fresh.map(({ place, comparison }) => [place, comparison]).toSorted()).toEqual([
    ["grip", "smoother"],
    ["left", "smoother"],
  ]);
});

test("a tester's file is opened, drawn and read, its cut-off changed, and kept with the ball as file and reading; what is no such file is answered", async ({
  page,
  request,
}) => {
  const { items } = await (await request.get("/api/balls?limit=1")).json();
  const ballId = items[0].id;
  await page.goto(`/measure?ball=${ballId}`);
  await page.getByRole("button", { name: "open a tester file" }).click();
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
