import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { AxeBuilder } from "@axe-core/playwright";
import { type APIRequestContext, expect, type Page, test } from "@playwright/test";
import { complaints } from "./room.ts";
import { ownServer } from "./shopServer.ts";
import { signStages } from "./signing.ts";

/* The path of a ball through the shop, on a real server over a real database: taken in, written, printed, worked, signed, ready. */

interface KnownBall {
  readonly id: string;
  readonly name: string;
  readonly serial: string;
}

/** A ball of the invented shop that has been worked on before, and is not in the shop now. */
async function knownBall(request: APIRequestContext): Promise<KnownBall> {
  const { items } = await (await request.get("/api/balls?limit=200")).json();
  const queue = await (await request.get("/api/queue")).json();
  const here = new Set(queue.items.map(({ ticket }: { ticket: { ballId: string } }) => ticket.ballId));
  for (const ball of items) {
    if (ball.serial === null || ball.bowlerId === null || ball.state !== "in use" || here.has(ball.id)) continue;
    const { last } = await (await request.get(`/api/balls/${ball.id}/last-time`)).json();
    if (last !== null && last.ticket.stages.length > 2) return ball;
  }
  throw new Error("The invented shop has no ball that was worked on.");
}

const FIELD = "Name, phone or the end of a serial";

/** Takes a ball in and gives its ticket's id. */
async function takenIn(page: Page, ball: KnownBall, finish: string): Promise<string> {
  await page.goto("/intake");
  await page.getByRole("combobox", { name: FIELD }).fill(ball.serial);
  await page.keyboard.press("Enter");
  await page.getByLabel("Which finish?").selectOption(finish);
  await page.getByRole("button", { name: "Check in, plan the finish" }).click();
  await page.waitForURL(/\/plan\?ticket=/);
  const id = new URL(page.url()).searchParams.get("ticket") ?? "";
  await page.goto(`/tickets/${id}`);
  await expect(page.locator(".state-track")).toBeVisible();
  return id;
}

async function passCautions(page: Page): Promise<void> {
  const seen = page.getByRole("button", { name: "Got it" });
  await expect(page.locator(".bench-step button").first()).toBeVisible();
  if (await seen.isVisible()) await seen.click();
}

test("a returning ball goes from its serial number to 'same as last time' to printed papers in three presses, within 15 s", async ({
  page,
  request,
}) => {
  const heard = complaints(page);
  const ball = await knownBall(request);
  await page.addInitScript(() => Object.assign(window, { print: () => document.body.setAttribute("data-printed", "yes") }));
  await page.goto("/intake");
  await expect(page.getByRole("combobox", { name: FIELD })).toBeFocused();
  const begun = Date.now();
  // As a scanner does: the figures, and Enter with the last of them.
  await page.keyboard.type(ball.serial);
  await page.keyboard.press("Enter");
  await expect(page.getByRole("button", { name: /^Same as last time:/ })).toBeVisible();
  await page.keyboard.press("Enter");
  await expect(page.getByRole("button", { name: /^Same as last time:/ })).toHaveAttribute("aria-pressed", "true");
  await page.keyboard.press("Enter");
  await page.waitForURL(/\/print\/visit\//);
  await expect(page.locator("body")).toHaveAttribute("data-printed", "yes");
  expect(Date.now() - begun).toBeLessThan(15_000);
  for (const paper of [".sheet-ticket", ".sheet-label", ".sheet-slip"]) await expect(page.locator(paper)).toContainText(ball.name);
  const visitId = new URL(page.url()).pathname.split("/")[3];
  const { items } = await (await request.get(`/api/tickets?visitId=${visitId}`)).json();
  expect(items).toHaveLength(1);
  const ticket = items[0];
  const { last } = await (await request.get(`/api/balls/${ball.id}/last-time`)).json();
  expect(ticket.finishAfter).toBe(last.ticket.finishAfter);
  const plain = (stages: readonly { readonly id: string }[]) => stages.map((stage) => ({ ...stage, id: "" }));
  expect(plain(ticket.stages)).toEqual(plain(last.ticket.stages));
  expect(heard).toEqual([]);
});

test("a new customer with a new ball needs two names; a crack stops the work; pressing twice keeps nothing twice", async ({
  page,
  request,
}) => {
  await page.goto("/intake");
  await page.getByRole("button", { name: "New customer" }).click();
  await page.getByRole("button", { name: "Check in, plan the finish" }).click();
  await expect(page.getByText("Choose a ball, or write what it is called.").first()).toBeVisible();
  await page.getByLabel("Name", { exact: true }).fill("Tamsin Quillfeather");
  await page.getByLabel("What the ball is called").fill("Slate Pipit");
  await page.getByRole("button", { name: "crack", exact: true }).click();
  await expect(page.getByRole("heading", { name: "Stop: no spinner, no heat" })).toBeVisible();
  await expect(page.locator(".take-in")).toContainText("Slate Pipit: crack.");
  await page.reload();
  await expect(page.getByLabel("What the ball is called")).toHaveValue("Slate Pipit");
  await page.getByRole("button", { name: "Check in, plan the finish" }).dblclick();
  await page.waitForURL(/\/tickets\//);
  await expect(page.getByText(/Stopped: /)).toBeVisible();
  await expect(page.getByRole("link", { name: /^(Start work|Keep working)$/ })).toHaveCount(0);
  const found = await (await request.get("/api/search?words=Quillfeather")).json();
  expect(found.bowlers).toHaveLength(1);
});

test("a visit of which only a part was kept goes on where it was, and nothing is kept twice", async ({ page, request }) => {
  await page.goto("/intake");
  await page.getByRole("button", { name: "New customer" }).click();
  await page.getByLabel("Name", { exact: true }).fill("Ember Halfkept");
  await page.getByLabel("What the ball is called").fill("Slate Plover");
  let isCut = true;
  await page.route("**/api/tickets", async (route) => {
    if (route.request().method() === "POST" && isCut) await route.abort();
    else await route.continue();
  });
  await page.getByRole("button", { name: "Check in, plan the finish" }).click();
  await expect(page.getByText("Not checked in yet")).toBeVisible();
  isCut = false;
  // Whoever presses again does so later, and the moment of the first try stays.
  await page.waitForTimeout(1100);
  await page.getByRole("button", { name: "Check in, plan the finish" }).click();
  await page.waitForURL(/\/plan\?ticket=/);
  const { bowlers } = await (await request.get("/api/search?words=Halfkept")).json();
  expect(bowlers).toHaveLength(1);
  const { items } = await (await request.get(`/api/visits?bowlerId=${bowlers[0].id}`)).json();
  expect(items).toHaveLength(1);
});

test("worked by the clock: the wrong label is refused, a reload in mid side stands and asks, every stage is signed, and it is ready", async ({
  page,
  request,
}) => {
  test.setTimeout(120_000);
  await page.clock.install();
  const ball = await knownBall(request);
  const id = await takenIn(page, ball, "2000");
  await page.getByRole("link", { name: /^(Start work|Keep working)$/ }).click();
  await expect(page.getByRole("heading", { name: "Clean" })).toBeVisible();
  await passCautions(page);
  await page.getByRole("button", { name: /^Sign / }).click();
  await page.getByLabel("Scan the label").fill("no such ball");
  await page.keyboard.press("Enter");
  await expect(page.getByText("That is not this ball's label")).toBeVisible();
  await page.getByLabel("Scan the label").fill(ball.serial.slice(-4));
  await page.keyboard.press("Enter");
  await passCautions(page);
  const clock = page.getByRole("timer");
  const whole = Number(await clock.textContent());
  await page.locator(".bench-key", { hasText: "Spinner’s on" }).click();
  await page.clock.runFor(5_000);
  await expect(clock).toHaveText(String(whole - 5));
  await page.reload();
  await expect(page.getByText(`The page went off after 5 of ${whole} seconds.`)).toBeVisible();
  await page.getByRole("button", { name: "No, it stood" }).click();
  await page.clock.runFor(3_000);
  await expect(clock).toHaveText(String(whole - 5));
  await page.locator(".bench-key", { hasText: "Resume" }).click();
  await page.clock.runFor(whole * 1000);
  await expect(page.getByText("Stop. Turn the ball.")).toBeVisible();

  const ticket = await (await request.get(`/api/tickets/${id}`)).json();
  for (let press = 0; press < 80 && !(await page.getByText("All stages are signed.").isVisible()); press++) {
    const seen = page.getByRole("button", { name: "Got it" });
    if (await seen.isVisible()) await seen.click();
    const start = page.locator(".bench-key", { hasText: "Spinner’s on" });
    if (await start.isVisible()) {
      await start.click();
      await page.clock.runFor((whole + 60) * 1000);
    }
    const sign = page.getByRole("button", { name: /^Sign / });
    if (await sign.isVisible()) await sign.click();
    await page.clock.runFor(500);
  }
  await expect(page.getByText("All stages are signed.")).toBeVisible();
  // The last signature makes it ready; until somebody says otherwise it can be undone here.
  await expect(page.getByRole("button", { name: "Undo signature" })).toBeVisible();
  await expect.poll(async () => (await (await request.get(`/api/tickets/${id}`)).json()).state, { timeout: 20_000 }).toBe("ready");
  const done = await (await request.get(`/api/stages-done?ticketId=${id}&limit=200`)).json();
  // One signature a stage; beside them what tells of single sides.
  const signed = done.items.filter(({ signs }: { signs: boolean }) => signs);
  expect(signed.map(({ stageId }: { stageId: string }) => stageId).sort()).toEqual(
    ticket.stages.map(({ id: one }: { id: string }) => one).sort(),
  );
  // What the shop keeps by uses has left the stock, and says for which stage.
  const [used] = done.items.flatMap((stage: { used: { stockItemId: string }[] }) => stage.used);
  const moved = await (await request.get(`/api/stock-movements?stockItemId=${used.stockItemId}&limit=200`)).json();
  const ids = done.items.map((stage: { id: string }) => stage.id);
  expect(
    moved.items
      .filter(({ stageDoneId }: { stageDoneId: string }) => ids.includes(stageDoneId))
      .map(({ change }: { change: number }) => change),
  ).toEqual([-1]);
});

test("a stop that the counter puts on a ball is seen in the guide that is open, before the next cut", async ({ page, request }) => {
  const ball = await knownBall(request);
  const id = await takenIn(page, ball, "1000");
  await page.goto(`/bench/${id}`);
  await expect(page.locator(".bench-step h1")).toBeVisible();
  const response = await request.get(`/api/tickets/${id}`);
  const stops = [{ at: "2026-01-01T00:00:00.000Z", why: "Invented: a crack beside the thumb", clearedAt: null }];
  const headers = { "If-Match": response.headers().etag };
  expect((await request.patch(`/api/tickets/${id}`, { data: { stops }, headers })).ok()).toBe(true);
  await expect(page.getByRole("alert")).toContainText("a crack beside the thumb");
});

test("a ball that came back is done again from its first stage, with the others that wait for it; what was signed before stays in its log", async ({
  page,
  request,
}) => {
  const ball = await knownBall(request);
  const id = await takenIn(page, ball, "1000");
  const other = await takenIn(page, await knownBall(request), "2000");
  const now = async () => (await request.get(`/api/tickets/${id}`)).json();
  const { items: people } = await (await request.get("/api/people?state=works%20here&order=oldest%20first")).json();
  const [{ id: personId, initials }] = people;
  const { stages } = await now();
  for (const { id: stageId, kind, abrasive } of stages) {
    const data = { ticketId: id, personId, initials, doneAt: new Date().toISOString(), stageId, revision: 0, kind, abrasive };
    expect((await request.post("/api/stages-done", { data, headers: { "Idempotency-Key": crypto.randomUUID() } })).ok()).toBe(true);
  }
  const move = async (...states: readonly string[]) => {
    for (const to of states) {
      const headers = { "If-Match": `"${(await now()).version}"`, "Idempotency-Key": crypto.randomUUID() };
      expect((await request.post(`/api/tickets/${id}/move`, { data: { to }, headers })).ok()).toBe(true);
    }
  };
  await move("in work", "ready", "collected");
  const inLog = page.locator(".ball-log li", { hasText: `signed ${initials}` });
  await page.goto(`/balls/${ball.id}`);
  await expect(page.locator("#answer h1")).toBeVisible();
  await expect.poll(() => inLog.count()).toBeGreaterThanOrEqual(stages.length);
  const before = await inLog.count();
  await page.goto(`/bench/${id}`);
  await expect(page.getByText("All stages are signed.")).toBeVisible();
  await move("rework");
  await page.goto("/");
  await page
    .getByRole("region", { name: "Work together" })
    .getByRole("link", { name: /^Clean: / })
    .click();
  await page.waitForURL(/\/bench\//);
  expect(new URL(page.url()).pathname.split("/")[2].split(",")).toEqual(expect.arrayContaining([id, other]));
  await page.goto(`/bench/${id}`);
  await expect(page.getByRole("heading", { name: "Clean" })).toBeVisible();
  await page.goto(`/balls/${ball.id}`);
  await expect(inLog).toHaveCount(before);
});

test("a browser that names somebody who has left takes the first who works here, and reads on", async ({ page, request }) => {
  await page.addInitScript(() => localStorage.setItem("gritwright.person", "01890000-0000-7000-8000-00000000000a"));
  await page.goto("/stock");
  await expect(page.getByRole("heading", { name: "Stock" })).toBeVisible();
  const { items } = await (await request.get("/api/people?state=works%20here&order=oldest%20first")).json();
  await expect(page.getByLabel("At work")).toHaveValue(items[0].id);
  await expect.poll(() => page.evaluate(() => localStorage.getItem("gritwright.person"))).toBe(items[0].id);
});

test("balls that wait for the same stage open in the guide together, with one press", async ({ page, request }) => {
  for (const wish of ["1000", "3000"]) await takenIn(page, await knownBall(request), wish);
  await page.goto("/");
  const batch = page.getByRole("region", { name: "Work together" }).getByRole("link", { name: /^Clean: \d+ balls/ });
  await batch.click();
  await page.waitForURL(/\/bench\//);
  const opened = new URL(page.url()).pathname.split("/")[2].split(",");
  expect(opened.length).toBeGreaterThan(1);
  for (const id of opened) {
    const [{ stages, been }, { items }] = await Promise.all(
      [`/api/tickets/${id}`, `/api/stages-done?ticketId=${id}`].map(async (path) => (await request.get(path)).json()),
    );
    // What was signed before a ball came back counts no more.
    const back = been.findLast(({ state }: { state: string }) => state === "rework")?.at ?? "";
    const signed = items.filter(({ createdAt }: { createdAt: string }) => createdAt >= back);
    expect([stages[0].kind, signed]).toEqual(["clean", []]);
  }
  await expect(page.getByRole("heading", { name: "Clean" })).toBeVisible();
});

test("the server dies in the middle of the work: the guide goes on, says what waits, and sends it later, once", async ({ browser }) => {
  test.setTimeout(120_000);
  const data = mkdtempSync(join(tmpdir(), "gritwright-away-"));
  let server = await ownServer(data, 0);
  const context = await browser.newContext({ baseURL: server.address });
  try {
    const page = await context.newPage();
    const ball = await knownBall(context.request);
    const id = await takenIn(page, ball, "3000");
    await page.getByRole("link", { name: /^(Start work|Keep working)$/ }).click();
    await passCautions(page);
    await expect(page.getByRole("button", { name: /^Sign / })).toBeVisible();
    await server.kill();
    await page.getByRole("button", { name: /^Sign / }).click();
    // The signature, and where that had not gone out yet that the cautions were read.
    const waits = page.getByText(/^[12] things? waits? to be sent to the shop\.$/);
    await expect(waits.first()).toBeVisible();
    await expect(page.getByRole("heading", { name: /^Pad/ })).toBeVisible();
    server = await ownServer(data, Number(new URL(server.address).port));
    await expect(waits).toHaveCount(0);
    await expect(page.getByText("The shop's server answers again")).toBeVisible();
    const done = await (await context.request.get(`/api/stages-done?ticketId=${id}`)).json();
    // Beside the signature stands only that the cautions were read.
    const signed = done.items.filter(({ signs }: { signs: boolean }) => signs);
    expect(signed.map(({ kind }: { kind: string }) => kind)).toEqual(["clean"]);
  } finally {
    await context.close();
    await server.kill();
    rmSync(data, { recursive: true, force: true });
  }
});

test("two counters change one ticket: the second is told, and nothing is overwritten", async ({ page, request }) => {
  const ball = await knownBall(request);
  const id = await takenIn(page, ball, "1000");
  await page.getByRole("button", { name: "Change the finish" }).click();
  await expect(page.getByLabel("Finish wanted")).toHaveValue("1000");
  const ticket = await (await request.get(`/api/tickets/${id}`)).json();
  const other = await request.patch(`/api/tickets/${id}`, {
    data: { complaint: "Said at the other counter." },
    headers: { "If-Match": `"${ticket.version}"` },
  });
  expect(other.status()).toBe(200);
  await page.getByLabel("Finish wanted").selectOption("4000");
  await expect(page.getByText("Somebody else changed this meanwhile.")).toBeVisible();
  const now = await (await request.get(`/api/tickets/${id}`)).json();
  expect([now.finishAfter, now.complaint]).toEqual(["1000", "Said at the other counter."]);
});

// In points: an inch is 72, 25.4 mm. ISO 216 for A4 and A6, ANSI for letter; labels are as wide and high as they are written.
for (const [what, pages, paper] of [
  ["ticket", { width: 594.96, height: 841.92 }, { paperSize: "A4" }],
  ["ticket", { width: 612, height: 792 }, { paperSize: "Letter" }],
  ["ticket", { width: 396, height: 612 }, { ticketSize: "half letter" }],
  ["label", { width: 175.75, height: 255.12 }, { labelSize: "62 × 90 mm" }],
  ["label", { width: 162, height: 90 }, { labelSize: "2.25 x 1.25 in" }],
  ["label", { width: 175.75, height: 82.2 }, { labelSize: "62 × 29 mm" }],
  ["care", { width: 297.64, height: 419.53 }, { cardSize: "A6" }],
  ["care", { width: 396, height: 612 }, { cardSize: "half letter" }],
  ["care", { width: 594.96, height: 841.92 }, { cardSize: "A4" }],
  ["care", { width: 612, height: 792 }, { cardSize: "Letter" }],
] as const) {
  test(`the ${what} is one page of the paper that the shop has: ${Object.values(paper).join()}`, async ({ page, request }) => {
    const ball = await knownBall(request);
    const id = await takenIn(page, ball, "2000 + polish");
    const { version } = await (await request.get("/api/settings")).json();
    expect((await request.patch("/api/settings", { data: paper, headers: { "If-Match": `"${version}"` } })).ok()).toBe(true);
    if (what === "care") await signStages(request, id);
    await page.goto(`/print/${what}/${id}`);
    await expect(page.locator(".sheet").getByRole("heading", { name: ball.name }).first()).toBeVisible();
    if (what === "care") await expect(page.locator(".care-stages li").first()).toBeVisible();
    const text = (await page.pdf({ preferCSSPageSize: true })).toString("latin1");
    const boxes = [...text.matchAll(/\/MediaBox\s*\[\s*0\s+0\s+([\d.]+)\s+([\d.]+)\s*\]/g)].map(([, width, height]) => [
      Number(width),
      Number(height),
    ]);
    expect(boxes).toHaveLength(1);
    expect(Math.abs(boxes[0][0] - pages.width)).toBeLessThan(1.5);
    expect(Math.abs(boxes[0][1] - pages.height)).toBeLessThan(1.5);
  });
}

test("a ball's log takes games down, and what others did to it makes its finish unknown", async ({ page, request }) => {
  const { items } = await (await request.get("/api/balls?limit=200")).json();
  const ball = items.find((one: { surface: { finish: string | null }[] }) => one.surface.some(({ finish }) => finish !== null));
  await page.goto(`/balls/${ball.id}`);
  await expect(page.getByRole("heading", { name: ball.name })).toBeVisible();
  await expect(page.getByRole("img", { name: /fade/i })).toBeVisible();
  await page.getByLabel("Games bowled since the last entry").fill("-3");
  await expect(page.getByText("a whole number from 1 to 10000")).toBeVisible();
  await page.getByLabel("Games bowled since the last entry").fill("12");
  await page.getByRole("button", { name: "Add the games" }).click();
  await expect(page.getByText("12 games").first()).toBeVisible();
  await page.getByRole("button", { name: "A coin machine cleaned it" }).click();
  await expect(page.getByText("What is on the ball is not known, so its fade is not drawn.")).toBeVisible();
  const kept = await (await request.get(`/api/balls/${ball.id}`)).json();
  expect(kept.games).toHaveLength(ball.games.length + 1);
  expect(kept.games.at(-1).games).toBe(12);
});

for (const look of ["paper", "bench"] as const) {
  test(`nothing for axe to find at today, intake, ticket and guide, look ${look}`, async ({ page, request }) => {
    await page.addInitScript((chosen) => localStorage.setItem("gritwright.look", chosen), look);
    const ball = await knownBall(request);
    const id = await takenIn(page, ball, "1000");
    for (const path of ["/", "/intake", `/tickets/${id}`, `/balls/${ball.id}`, `/bench/${id}`, `/print/ticket/${id}`]) {
      await page.goto(path);
      await expect(page.locator("#answer h1, #answer h2").first()).toBeVisible();
      const { violations } = await new AxeBuilder({ page }).analyze();
      expect(violations.map((v) => `${path} ${v.id}: ${v.nodes.map((n) => n.target.join(" ")).join(", ")}`)).toEqual([]);
    }
  });
}

for (const width of [360, 820, 1440]) {
  test(`at ${width} px the rooms of the path do not run out of the page`, async ({ page, request }) => {
    await page.setViewportSize({ width, height: 900 });
    const ball = await knownBall(request);
    const id = await takenIn(page, ball, "500");
    for (const path of ["/", "/intake", `/tickets/${id}`, `/balls/${ball.id}`, `/bench/${id}`]) {
      await page.goto(path);
      await expect(page.locator("#answer h1").first()).toBeVisible();
      expect(await page.evaluate(() => document.documentElement.scrollWidth), path).toBeLessThanOrEqual(width);
    }
  });
}
