import { type APIRequestContext, expect, type Page, test } from "@playwright/test";
import { openWish } from "./room.ts";
import { signStages } from "./signing.ts";

/* What the page says of a ball's work is what was signed: after another wish, on the card, after a power cut, through another batch. */

/** An invented ball on the counter, with work planned by the page to a finish. */
async function onTheCounter(page: Page, request: APIRequestContext, name: string, finish: string): Promise<string> {
  const post = async (path: string, data: object) => (await (await request.post(path, { data })).json()) as { id: string };
  const at = new Date().toISOString();
  const ball = await post("/api/balls", { name, serial: `SW-${name}`, cover: "solid", boxFinish: "3000" });
  const visit = await post("/api/visits", { arrivedAt: at, currency: "USD" });
  const ticket = await post("/api/tickets", { visitId: visit.id, ballId: ball.id, receivedAt: at });
  await wish(page, ticket.id, finish);
  return ticket.id;
}

async function wish(page: Page, id: string, finish: string): Promise<void> {
  await page.goto(`/tickets/${id}`);
  await openWish(page);
  await page.getByLabel("Finish wanted").selectOption(finish);
  await expect(
    page
      .locator("table.stages tbody tr")
      .filter({ hasText: finish.split(" ")[0] })
      .first(),
  ).toBeVisible();
}

test("another wish after the cut was signed: the new cut is not taken for signed, and the guide goes on there", async ({
  page,
  request,
}) => {
  const id = await onTheCounter(page, request, "Slate Godwit", "1000");
  await signStages(request, id, { kinds: ["clean", "cut"] });
  await wish(page, id, "2000");
  const row = page.locator("table.stages tbody tr").filter({ hasText: "2000" });
  await expect(row.locator(".initials")).toHaveText("next");
  await expect(page.locator("table.stages tbody tr").first().locator(".initials")).toContainText("done before");
  await page.getByRole("link", { name: /^(Start work|Keep working)$/ }).click();
  await expect(page.locator(".bench-step h1")).toContainText("2000");
  await page.goto(`/print/care/${id}`);
  await expect(page.locator(".care h2")).toHaveText("Slate Godwit is in work");
  await expect(page.locator(".care")).not.toContainText("is at");
});

test("the care card claims what was signed, by whom, and the right sign of wear", async ({ page, request }) => {
  const id = await onTheCounter(page, request, "Slate Whimbrel", "1000 + polish");
  await page.goto(`/print/care/${id}`);
  await expect(page.locator(".sheet")).toContainText("Sign the work first.");
  await expect(page.locator(".care")).toHaveCount(0);
  await signStages(request, id, { kinds: ["clean", "cut", "polish", "check"] });
  await page.reload();
  await expect(page.locator(".care h2")).toHaveText("Slate Whimbrel is at 1000 + polish");
  await expect(page.locator(".care")).toContainText(/hooks earlier.*the track looks dull/);
  await expect(page.locator(".care")).not.toContainText("skids longer");
  // No plan was taken: the card says nothing of what it does; nothing was measured: it says that.
  await expect(page.locator(".care")).not.toContainText("What it does now");
  await expect(page.locator(".care")).toContainText("Not measured after the work.");
  await expect(page.locator(".care")).not.toContainText(/by eye/i);
  await expect(page.locator(".care-top")).toContainText(String(new Date().getFullYear()));
  const { items } = await (await request.get("/api/people?state=works%20here&order=oldest%20first")).json();
  await expect(page.locator(".care-stages li")).toContainText([/^Cleaned/, /^Pad 1000, all six sides/, /polish/i, /^Checked/]);
  await expect(page.locator(".care-stages li").first()).toContainText(items[0].initials);
});

test("a side that was worked is not sanded twice: on another device, in another batch, after the page went off", async ({
  page,
  request,
  browser,
}) => {
  test.setTimeout(120_000);
  await page.clock.install();
  const id = await onTheCounter(page, request, "Slate Turnstone", "1000");
  const other = await onTheCounter(page, request, "Slate Sanderling", "1000");
  await signStages(request, id, { kinds: ["clean"] });
  await signStages(request, other, { kinds: ["clean"] });
  await page.goto(`/bench/${id}`);
  await page.getByRole("button", { name: /It’s this ball/ }).click();
  await page.getByRole("button", { name: "Got it" }).click();
  const whole = Number(await page.getByRole("timer").textContent());
  for (const press of ["Spinner’s on", "Spinner’s on"]) {
    await page.locator(".bench-key", { hasText: press }).click();
    await page.clock.runFor((whole + 1) * 1000);
  }
  await expect(page.locator(".bench-ring .done")).toHaveCount(2);
  // The third side runs when the power goes.
  await page.locator(".bench-key.primary").click();
  await page.clock.runFor(4000);
  await page.goto(`/bench/${other},${id}`);
  await page.clock.runFor(1000);
  // In a batch the ball that is first is looked at first; what was seen once is not shown again.
  await page.goto(`/bench/${id},${other}`);
  await page.clock.runFor(1000);
  const said = await page.getByText(/The page went off after \d+ of/).textContent();
  // The clock of the page runs on by itself between the steps of the test.
  const ran = Number(/after (\d+) of/.exec(said ?? "")?.[1]);
  expect(ran).toBeGreaterThanOrEqual(4);
  expect(ran).toBeLessThan(whole);
  await page.getByRole("button", { name: "No, it stood" }).click();
  expect(Math.abs(Number(await page.getByRole("timer").textContent()) - (whole - ran))).toBeLessThanOrEqual(1);
  await expect(page.locator(".bench-side")).toContainText("side 3 of 6");

  const device = await browser.newContext();
  const there = await device.newPage();
  await there.goto(`${new URL(page.url()).origin}/bench/${id}`);
  await there.getByRole("button", { name: /It’s this ball/ }).click();
  // The same person has read the cautions at this ball; the side that runs is asked for first.
  await expect(there.getByRole("alert")).toContainText("began “Left of grip up” on another device");
  await expect(there.getByRole("button", { name: "Got it" })).toHaveCount(0);
  await expect(there.locator(".bench-clock")).toHaveCount(0);
  await there.getByRole("button", { name: "Take over" }).click();
  await expect(there.locator(".bench-side")).toContainText("side 3 of 6");
  await expect(page.getByRole("alert")).toContainText("began “Left of grip up” on another device");
  await device.close();
});

test("a signature is taken back with its reason, which stays in the log; the stage is to be done again", async ({ page, request }) => {
  const id = await onTheCounter(page, request, "Slate Dunlin", "1000");
  await signStages(request, id, { kinds: ["clean", "cut", "check"] });
  await page.goto(`/tickets/${id}`);
  const row = page.locator("table.stages tbody tr").filter({ hasText: "1000" });
  await row.getByRole("button", { name: "Take back" }).click();
  await row.getByLabel("Why it is taken back").fill("Wrong pad");
  await row.getByRole("button", { name: "Take back" }).click();
  await expect(row.locator(".initials")).toHaveText("next");
  await page.getByRole("link", { name: "Ball log" }).click();
  await expect(page.locator(".ball-log")).toContainText("signature taken back");
  await expect(page.locator(".ball-log")).toContainText("Wrong pad");
  await page.goto(`/bench/${id}`);
  await expect(page.locator(".bench-step h1")).toContainText("1000");
});

test("a signature that serves a newer plan is taken back from the history; a ticket with work left is ready only with a reason", async ({
  page,
  request,
}) => {
  const id = await onTheCounter(page, request, "Slate Knot", "1000");
  await signStages(request, id, { kinds: ["clean", "cut"] });
  await wish(page, id, "2000");
  const cut = page.locator("table.stages tbody tr").filter({ hasText: "2000" });
  await expect(cut.locator(".initials")).toHaveText("next");
  await page.getByRole("button", { name: "History" }).click();
  const signed = page.locator(".history li").filter({ hasText: "signed: Sand, pad 1000" });
  await signed.getByRole("button", { name: "Take back" }).click();
  await signed.getByLabel("Why it is taken back").fill("Other ball");
  await signed.getByRole("button", { name: "Take back" }).click();
  await expect(page.locator(".history li").filter({ hasText: "signature taken back" })).toContainText("Other ball");
  await expect(signed).toHaveCount(0);
  await page.getByRole("button", { name: "Ready as it is" }).click();
  await page.getByLabel("Why is it ready?").fill("Bowler wants it back");
  await page.getByRole("button", { name: "It is ready" }).click();
  await expect(page.locator(".history li").last()).toContainText("Bowler wants it back");
  expect((await (await request.get(`/api/tickets/${id}`)).json()).state).toBe("ready");
});
