import { type APIRequestContext, expect, type Page, test } from "@playwright/test";
import { complaints } from "./room.ts";

/* The counter: somebody unknown, several hits, what was said in words, a stop, and a phone. */

const FIELD = "Name, phone or the end of a serial";

async function made(request: APIRequestContext, kind: string, data: object) {
  const answer = await request.post(`/api/${kind}`, { data });
  expect(answer.status()).toBe(201);
  return answer.json();
}

/** The page prints to the test instead of to a printer. */
async function withPrinter(page: Page): Promise<void> {
  await page.addInitScript(() => Object.assign(window, { print: () => document.body.setAttribute("data-printed", "yes") }));
}

test("somebody unknown with three balls is checked in within a minute, without one number, and every paper is printed", async ({
  page,
  request,
}) => {
  const heard = complaints(page);
  await withPrinter(page);
  await page.goto("/intake");
  const field = page.getByRole("combobox", { name: FIELD });
  await expect(field).toBeFocused();
  const begun = Date.now();
  await page.keyboard.type("Perpetua Unseen");
  await expect(page.getByText("No match. Enter makes a new customer.")).toBeVisible();
  await page.keyboard.press("Enter");
  await expect(page.getByLabel("Name", { exact: true })).toHaveValue("Perpetua Unseen");
  const names = ["Invented Alder", "Invented Birch", "Invented Cedar"];
  for (const [i, name] of names.entries()) {
    if (i > 0) await page.getByRole("button", { name: /^New ball name only/ }).click();
    await expect(page.getByLabel("What the ball is called")).toBeFocused();
    await page.keyboard.type(name);
  }
  await page.getByRole("button", { name: "Lost its hook" }).click();
  await page.getByRole("button", { name: "a season" }).click();
  await page.getByRole("group", { name: "Speed" }).getByRole("button", { name: "slow" }).click();
  await page.getByRole("group", { name: "Hook" }).getByRole("button", { name: "a lot" }).click();
  await page.getByRole("button", { name: "2nd" }).click();
  await page.getByRole("button", { name: "Thu" }).click();
  await page.getByRole("button", { name: "the usual" }).click();
  await expect(page.getByText("Prints 3 tickets, 3 labels, 1 claim slip.")).toBeVisible();
  await page.getByRole("button", { name: "Check in and print all" }).click();
  await page.waitForURL(/\/print\/visit\//);
  await expect(page.locator("body")).toHaveAttribute("data-printed", "yes");
  expect(Date.now() - begun).toBeLessThan(60_000);

  await expect(page.locator(".sheet-ticket")).toHaveCount(3);
  await expect(page.locator(".sheet-label")).toHaveCount(3);
  await expect(page.locator(".sheet-slip")).toHaveCount(1);
  for (const [i, name] of names.entries()) {
    await expect(page.locator(".sheet-ticket").nth(i)).toContainText(name);
    await expect(page.locator(".sheet-ticket").nth(i)).toContainText("cover not known");
    await expect(page.locator(".sheet-ticket").nth(i)).toContainText("finish not known");
    await expect(page.locator(".sheet-label").nth(i)).toContainText(name);
    await expect(page.locator(".sheet-slip")).toContainText(name);
  }
  await expect(page.locator(".sheet-ticket").nth(2)).toContainText("a season");

  const { bowlers } = await (await request.get("/api/search?words=Unseen")).json();
  const [{ id, deliveries }] = bowlers;
  expect(deliveries).toMatchObject([{ how: "word only", speed: "slow", hook: "much", plays: "2nd", speedMph: null, revRateRpm: null }]);
  const balls = (await (await request.get(`/api/balls?bowlerId=${id}&order=oldest%20first`)).json()).items;
  expect(balls.map(({ cover, boxFinish, surface }: { cover: null; boxFinish: null; surface: [] }) => [cover, boxFinish, surface])).toEqual(
    names.map(() => [null, null, []]),
  );
  expect(balls[2].games).toMatchObject([{ games: 0, word: "a season" }]);
  const tickets = (await (await request.get(`/api/tickets?bowlerId=${id}&order=oldest%20first`)).json()).items;
  for (const ticket of tickets)
    expect(ticket.playedOn).toEqual({ houseId: null, patternId: null, pattern: "the usual", night: "thursday" });
  expect(tickets[2].symptoms).toEqual(["hooksLess"]);
  expect(heard).toEqual([]);

  // A plan of such a ball is an answer, and says what it had to assume.
  await page.goto(`/plan?ticket=${tickets[2].id}`);
  await expect(page.getByText(/The cover isn’t known\. We tried/)).toBeVisible({ timeout: 40_000 });
  await expect(page.getByText(/Today’s finish isn’t known, so nothing is compared with it/)).toBeVisible();
  await expect(page.getByText("needed here")).toHaveCount(0);
});

test("of several hits the arrows choose, and Enter takes the one that they have reached", async ({ page, request }) => {
  for (const serial of ["KV-7731", "LV-7731"]) await made(request, "balls", { name: `Invented ${serial}`, serial, cover: "pearl" });
  await page.goto("/intake");
  const field = page.getByRole("combobox", { name: FIELD });
  await field.pressSequentially("7731");
  const hits = page.getByRole("listbox", { name: "Matches" }).getByRole("option");
  await expect(hits).toHaveCount(2);
  // A scanner's Enter with two hits takes neither.
  await page.keyboard.press("Enter");
  await expect(hits.nth(0)).toHaveAttribute("aria-selected", "true");
  await expect(page.locator(".ball-card.here")).toHaveCount(0);
  await page.keyboard.press("ArrowDown");
  await expect(hits.nth(1)).toHaveAttribute("aria-selected", "true");
  const chosen = (await hits.nth(1).locator("strong").textContent()) ?? "";
  await page.keyboard.press("Enter");
  await expect(page.locator(".ball-card.current")).toContainText(chosen);
  // The whole number of one is that one, though the other ends alike.
  await field.fill("KV-7731");
  await page.keyboard.press("Enter");
  await expect(page.locator(".ball-card.here")).toHaveCount(chosen.includes("KV") ? 1 : 2);
  await expect(page.locator(".ball-card.current")).toContainText("KV-7731");
});

test("a hollow sound stops the ticket and turns the panel, and nothing is planned on it", async ({ page, request }) => {
  const ball = await made(request, "balls", { name: "Invented Cracked", serial: "CR-90210", cover: "solid", boxFinish: "2000" });
  await page.goto("/intake");
  await page.getByRole("combobox", { name: FIELD }).fill("CR-90210");
  await page.keyboard.press("Enter");
  await page.getByLabel("Which finish?").selectOption("1000");
  await page.getByRole("button", { name: "sounds hollow" }).click();
  const panel = page.getByRole("complementary", { name: "Price and promise" });
  await expect(panel.getByRole("heading", { name: "Stop: no spinner, no heat" })).toBeVisible();
  await expect(panel.locator(".bill-line")).toHaveCount(0);
  await page.getByRole("button", { name: "Check in, plan the finish" }).click();
  await page.waitForURL(/\/tickets\//);
  const { items } = await (await request.get(`/api/tickets?ballId=${ball.id}`)).json();
  expect(items[0].stages).toEqual([]);
  expect(items[0].stops).toHaveLength(1);
});

test("deep scratches, or scratches at which nobody has looked, are cut back from 500; shallow ones are not", async ({ page, request }) => {
  const first = async (name: string, tap: string | null) => {
    const ball = await made(request, "balls", { name, serial: name, cover: "pearl", boxFinish: "4000" });
    await page.goto("/intake");
    await page.getByRole("combobox", { name: FIELD }).fill(name);
    await page.keyboard.press("Enter");
    await page.getByRole("button", { name: "Scratched or nicked" }).click();
    if (tap !== null) await page.getByRole("button", { name: tap }).click();
    await page.getByLabel("Which finish?").selectOption("4000");
    await page.getByRole("button", { name: "Check in, plan the finish" }).click();
    await page.waitForURL(/\/plan\?ticket=/);
    const { items } = await (await request.get(`/api/tickets?ballId=${ball.id}`)).json();
    return [items[0].scratches, items[0].stages.find(({ kind }: { kind: string }) => kind === "cut").abrasive];
  };
  expect(await first("SCR-001", "it catches")).toEqual(["deep", "pad-500"]);
  expect(await first("SCR-002", null)).toEqual([null, "pad-500"]);
  expect(await first("SCR-003", "it doesn’t")).toEqual(["none", "pad-4000"]);
});

test("what is known of a bowler is on, what is tapped is kept for its part alone; the pattern is the one of the plan", async ({
  page,
  request,
}) => {
  const house = await made(request, "houses", { name: "Invented Basin" });
  const pattern = await made(request, "patterns", { name: "Invented Heavy", houseId: house.id, oil: { pattern: "heavy-44" } });
  const measured = { at: "2026-05-01T10:00:00.000Z", how: "video", speedMph: 19.2, revRateRpm: 240, axisRotationDeg: 40, axisTiltDeg: 12 };
  const bowler = await made(request, "bowlers", { name: "Invented Measured", deliveries: [measured] });
  await made(request, "balls", { name: "Invented Known", serial: "KN-4455", cover: "hybrid", boxFinish: "2000", bowlerId: bowler.id });
  await page.goto("/intake");
  await page.getByRole("combobox", { name: FIELD }).fill("KN-4455");
  await page.keyboard.press("Enter");
  const on = (group: string) => page.getByRole("group", { name: group }).locator("[aria-pressed=true]");
  await expect(on("Speed")).toHaveText("fast");
  await expect(on("Hook")).toHaveText("a little");
  await expect(on("Plays")).toHaveCount(0);
  await page.getByRole("button", { name: "3rd" }).click();
  await page.getByRole("button", { name: "Invented Basin" }).click();
  await page.getByRole("button", { name: "Invented Heavy" }).click();
  await page.getByRole("button", { name: "More games" }).click();
  await page.getByRole("button", { name: "More games" }).click();
  await page.getByRole("button", { name: "Check in, plan the finish" }).click();
  await page.waitForURL(/\/plan\?ticket=/);
  await expect(page.getByText("On Invented Heavy, as it was told at check-in.")).toBeVisible();
  const kept = await (await request.get(`/api/bowlers/${bowler.id}`)).json();
  expect(kept.deliveries).toHaveLength(2);
  expect(kept.deliveries[1]).toMatchObject({ how: "word only", speed: null, hook: null, plays: "3rd" });
  const { items } = await (await request.get(`/api/tickets?bowlerId=${bowler.id}`)).json();
  expect(items[0].playedOn).toEqual({ houseId: house.id, patternId: pattern.id, pattern: null, night: null });
  const ball = await (await request.get(`/api/balls/${items[0].ballId}`)).json();
  expect(ball.games).toMatchObject([{ games: 10, word: null }]);
});

test("what was set in a plan for a bowler is offered for the bowler's next ball", async ({ page, request }) => {
  const bowler = await made(request, "bowlers", { name: "Invented Planner" });
  for (const serial of ["PL-0001", "PL-0002"])
    await made(request, "balls", { name: `Invented ${serial}`, serial, cover: "pearl", boxFinish: "3000", bowlerId: bowler.id });
  const planOf = async (serial: string) => {
    await page.goto("/intake");
    await page.getByRole("combobox", { name: FIELD }).fill(serial);
    await page.keyboard.press("Enter");
    await expect(page.locator(".ball-card.current")).toContainText(serial);
    await page.getByRole("button", { name: "Check in, plan the finish" }).click();
    await page.waitForURL(/\/plan\?ticket=/);
  };
  const offer = page.getByRole("button", { name: /^Use bowler and lane as planned on/ });
  await planOf("PL-0001");
  await expect(offer).toHaveCount(0);
  await page.locator("label.one-of-word", { hasText: "words" }).click();
  await page.getByLabel("How fast").selectOption("fast");
  await page.getByLabel("Plays over which arrow").selectOption("2nd");
  await page.getByRole("button", { name: "Take this finish for the ticket" }).click({ timeout: 40_000 });
  await page.waitForURL(/\/tickets\//);
  await planOf("PL-0002");
  await expect(page.getByLabel("Plays over which arrow")).toHaveValue("");
  await offer.click();
  await expect(page.getByLabel("Plays over which arrow")).toHaveValue("2nd");
  await expect(page.getByLabel("How fast")).toHaveValue("fast");
  await expect(offer).toHaveCount(0);
  // The ball stays its own.
  await expect(page.getByRole("textbox", { name: "Name" }).nth(1)).toHaveValue("Invented PL-0002");
});

test("on a phone price, promise and the one button stay docked in reach, and nothing scrolls sideways", async ({ page, request }) => {
  await made(request, "balls", { name: "Invented Pocket", serial: "PH-3131", cover: "pearl", boxFinish: "3000" });
  await page.setViewportSize({ width: 360, height: 780 });
  await page.goto("/intake");
  await page.getByRole("combobox", { name: FIELD }).fill("PH-3131");
  await page.keyboard.press("Enter");
  const button = page.getByRole("button", { name: "Check in", exact: true });
  await expect(button).toBeInViewport();
  await page.getByRole("button", { name: "Nothing, it’s due" }).scrollIntoViewIfNeeded();
  await expect(button).toBeInViewport();
  const box = await button.boundingBox();
  expect(box?.height).toBeGreaterThanOrEqual(48);
  await expect(page.locator(".dock-words")).toContainText("No price yet");
  expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
  // What is tapped at the counter is at least 48 px high.
  for (const tapped of await page.locator(".intake :is(.pill, .complaint, .ball-card > button, .button, .stepper button)").all())
    if (await tapped.isVisible()) expect((await tapped.boundingBox())?.height).toBeGreaterThanOrEqual(48);
});

test("a ball that is here already is said to be: its ticket is a press away, and a second one wants a reason", async ({
  page,
  request,
}) => {
  const ball = await made(request, "balls", { name: "Invented Twice", serial: "TWI-4471", cover: "solid", boxFinish: "2000" });
  const at = new Date().toISOString();
  const visit = await made(request, "visits", { arrivedAt: at, currency: "USD" });
  const first = await made(request, "tickets", { visitId: visit.id, ballId: ball.id, receivedAt: at });
  const count = async () => (await (await request.get(`/api/tickets?ballId=${ball.id}`)).json()).items.length;
  await withPrinter(page);
  await page.goto("/intake");
  await page.getByRole("combobox", { name: FIELD }).fill("TWI-4471");
  await page.keyboard.press("Enter");
  await expect(page.getByRole("alert").first()).toContainText("Invented Twice is already here: received");
  await page.getByLabel("Which finish?").selectOption("1000");
  await page.getByRole("button", { name: "Check in and print all" }).click();
  await expect(page.getByText("This ball has an open ticket.").first()).toBeVisible();
  expect(await count()).toBe(1);
  await expect(page.getByRole("link", { name: "Open its ticket" })).toHaveAttribute("href", `/tickets/${first.id}`);
  await page.getByLabel("Or check it in a second time, because").fill("Thumb work by another hand");
  await page.getByRole("button", { name: "Check in and print all" }).click();
  await page.waitForURL(/\/print\/visit\//);
  expect(await count()).toBe(2);
  const { items } = await (await request.get(`/api/tickets?ballId=${ball.id}`)).json();
  await page.goto(`/tickets/${items.find(({ id }: { id: string }) => id !== first.id).id}`);
  await expect(page.getByText("Checked in beside another open ticket: Thumb work by another hand")).toBeVisible();
});
