import { type APIRequestContext, expect, test } from "@playwright/test";

/* No work is billed by accident, and none forgotten: what it costs is there at intake, asked at hand-over, and stands among the open balances. */

async function made(request: APIRequestContext, path: string, data: object): Promise<{ id: string }> {
  const answer = await request.post(`/api/${path}`, { data });
  expect(answer.status(), await answer.text()).toBe(201);
  return answer.json();
}

/** A ball that is ready to be fetched, in a visit without a line. */
async function readyBall(request: APIRequestContext, ballName: string): Promise<{ ticketId: string; visitId: string }> {
  const at = new Date().toISOString();
  const bowler = await made(request, "bowlers", { name: `Owner of ${ballName}` });
  const ball = await made(request, "balls", { name: ballName, cover: "solid", bowlerId: bowler.id });
  const visit = await made(request, "visits", { bowlerId: bowler.id, arrivedAt: at, currency: "USD" });
  const ticket = await made(request, "tickets", { visitId: visit.id, ballId: ball.id, receivedAt: at });
  for (const [i, to] of ["in work", "ready"].entries()) {
    const moved = await request.post(`/api/tickets/${ticket.id}/move`, { data: { to }, headers: { "If-Match": `"${i + 1}"` } });
    expect(moved.status()).toBe(200);
  }
  return { ticketId: ticket.id, visitId: visit.id };
}

test("a ball without a price is asked about at hand-over; handed over all the same it stands in the open balances until it is priced", async ({
  page,
  request,
}) => {
  const { ticketId } = await readyBall(request, "Invented Unpriced");
  await page.goto(`/tickets/${ticketId}`);
  await expect(page.getByText("Invented Unpriced: not priced yet")).toBeVisible();
  await page.getByRole("button", { name: /^(Hand over|Take payment and hand over)$/ }).click();
  const question = page.getByRole("group", { name: "What does it cost?" });
  await expect(question).toContainText("Invented Unpriced has no price yet");
  expect((await (await request.get(`/api/tickets/${ticketId}`)).json()).state).toBe("ready");
  await question.getByRole("button", { name: "Keep it here" }).click();
  await expect(question).toBeHidden();
  await page.getByRole("button", { name: /^(Hand over|Take payment and hand over)$/ }).click();
  await question.getByRole("button", { name: "Price it later" }).click();
  await expect(page.locator(".state")).toContainText("collected");

  await page.goto("/money");
  const row = page.getByRole("row", { name: /Owner of Invented Unpriced/ });
  await expect(page.getByRole("table", { name: "Work without a price" }).getByRole("row").first()).toBeVisible();
  await expect(row).toContainText("collected");
  await row.getByRole("link", { name: "Invented Unpriced", exact: true }).click();
  await page.getByRole("button", { name: "Price the work" }).click();
  await page.getByLabel("Work charged").selectOption({ label: "US$20.00 Refresh" });
  await page.getByRole("button", { name: "Keep", exact: true }).click();
  // 2000 at the demonstration's 8.25 % is 165 more
  await expect(page.locator(".bill")).toContainText("tax, 8.25 %US$1.65");
  await expect(page.getByText("Tax is rounded once a bill, for each rate.")).toBeVisible();
  await page.goto("/money");
  await expect(row).toContainText("US$21.65");
  await expect(row).not.toContainText("collected");
});

test("pressed before the bill has been read, the question still comes first", async ({ page, request }) => {
  const { ticketId } = await readyBall(request, "Invented Hurry");
  let isHeld = true;
  await page.route("**/account", async (route) => {
    while (isHeld) await new Promise((resolve) => setTimeout(resolve, 50));
    await route.continue();
  });
  await page.goto(`/tickets/${ticketId}`);
  await page.getByRole("button", { name: /^(Hand over|Take payment and hand over)$/ }).click();
  isHeld = false;
  await expect(page.getByRole("group", { name: "What does it cost?" })).toBeVisible();
  expect((await (await request.get(`/api/tickets/${ticketId}`)).json()).state).toBe("ready");
});

test("free needs a reason; with it the ball goes out in one press, and nothing is open", async ({ page, request }) => {
  const { ticketId, visitId } = await readyBall(request, "Invented Gift");
  await page.goto(`/tickets/${ticketId}`);
  await page.getByRole("button", { name: /^(Hand over|Take payment and hand over)$/ }).click();
  const question = page.getByRole("group", { name: "What does it cost?" });
  await question.getByLabel("Work charged").selectOption("free");
  await question.getByRole("button", { name: "Hand it over" }).click();
  await expect(question.locator(".field-problem")).toContainText("Say why it is free.");
  await question.getByLabel("Why it is free").fill("Won at the open day");
  await question.getByRole("button", { name: "Hand it over" }).click();
  await expect(page.locator(".state")).toContainText("collected");
  await expect(page.getByText("Invented Gift: free, Won at the open day")).toBeVisible();
  const visit = await (await request.get(`/api/visits/${visitId}`)).json();
  expect(visit.free).toEqual([{ ticketId, why: "Won at the open day" }]);
  await page.goto("/money");
  await expect(page.getByRole("heading", { name: "Open balances" })).toBeVisible();
  await expect(page.getByRole("row", { name: /Owner of Invented Gift/ })).toHaveCount(0);
});

test("at intake the price of the work chosen is there by itself, and is charged to its ticket", async ({ page, request }) => {
  const bowler = await made(request, "bowlers", { name: "Invented Counter" });
  for (const name of ["Invented First", "Invented Second"])
    await made(request, "balls", { name, cover: "solid", boxFinish: "2000", bowlerId: bowler.id });
  await page.goto(`/intake?bowler=${bowler.id}`);
  const panel = page.getByRole("complementary", { name: "Price and promise" });
  await page.getByRole("button", { name: /Invented First/ }).click();
  await expect(panel).toContainText("No price yet");
  await page.getByLabel("Which finish?").selectOption("2000 + polish");
  await expect(panel).toContainText("Refresh + Polish");
  await expect(panel).toContainText("US$25.00");
  // By hand: 25.00 and 8.25 % of it, 2.0625, rounded once for the bill.
  await expect(panel.locator(".bill-sum")).toContainText("US$27.06");
  await page.getByRole("button", { name: /Invented Second/ }).click();
  await panel.getByRole("button", { name: "No charge: Invented Second" }).click();
  await expect(panel).toContainText("No charge");
  await page.getByRole("button", { name: "Check in, plan the finish" }).click();
  await expect(page.getByRole("alert")).toContainText("Say why it is free.");
  await panel.getByLabel("Why it is free").fill("Second ball free in May");
  await page.getByRole("button", { name: "Check in, plan the finish" }).click();
  await expect(page).toHaveURL(/\/plan\?ticket=/);
  const { items } = await (await request.get(`/api/visits?bowlerId=${bowler.id}`)).json();
  const tickets = (await (await request.get(`/api/tickets?bowlerId=${bowler.id}&order=oldest%20first`)).json()).items;
  expect(items[0].charges).toMatchObject([
    { what: "Refresh: Invented First", ticketId: tickets[0].id, eachCents: 2000, taxMillipercent: 8250 },
    { what: "Polish: Invented First", ticketId: tickets[0].id, eachCents: 500, taxMillipercent: 8250 },
  ]);
  expect(items[0].free).toEqual([{ ticketId: tickets[1].id, why: "Second ball free in May" }]);
});

test("at intake a price that the list does not have is typed, and taxed as the shop does", async ({ page, request }) => {
  const bowler = await made(request, "bowlers", { name: "Invented Haggler" });
  await made(request, "balls", { name: "Invented Third", cover: "solid", boxFinish: "2000", bowlerId: bowler.id });
  await page.goto(`/intake?bowler=${bowler.id}`);
  const panel = page.getByRole("complementary", { name: "Price and promise" });
  await page.getByRole("button", { name: /Invented Third/ }).click();
  await panel.getByRole("button", { name: /^Set a price/ }).click();
  await panel.getByLabel("Work charged").selectOption("another price …");
  await page.getByRole("button", { name: "Check in, plan the finish" }).click();
  await expect(page.getByText("An amount: 25 or 25.00.").first()).toBeVisible();
  await panel.getByLabel("Price", { exact: true }).fill("32.50");
  // 32.50 and 8.25 % of it, 2.68125, rounded once for the bill.
  await expect(panel.locator(".bill-sum")).toContainText("US$35.18");
  await page.getByRole("button", { name: "Check in, plan the finish" }).click();
  await expect(page).toHaveURL(/\/plan\?ticket=/);
  const { items } = await (await request.get(`/api/visits?bowlerId=${bowler.id}`)).json();
  expect(items[0].charges).toMatchObject([{ what: "Work: Invented Third", eachCents: 3250, taxMillipercent: 8250 }]);
});

test("a discount comes off with a reason, no more than the lines come to, and is taken back", async ({ page, request }) => {
  const { ticketId, visitId } = await readyBall(request, "Invented Bargain");
  const visit = await (await request.get(`/api/visits/${visitId}`)).json();
  const charges = [{ what: "Refresh", ticketId, eachCents: 2000, taxMillipercent: 8250 }];
  await request.patch(`/api/visits/${visitId}`, { data: { charges }, headers: { "If-Match": `"${visit.version}"` } });
  await page.goto(`/tickets/${ticketId}`);
  await page.getByRole("button", { name: "Discount…" }).click();
  const form = page.getByRole("form", { name: "Discount…" });
  await form.getByLabel("Amount, USD").fill("20.01");
  await expect(form).toContainText("at most US$20.00");
  await form.getByLabel("Amount, USD").fill("5");
  await expect(form.getByRole("button", { name: "Take it off" })).toBeDisabled();
  await form.getByLabel("Why").fill("Comes often");
  await form.getByRole("button", { name: "Take it off" }).click();
  // 15.00 and 8.25 % of it, 1.2375
  await expect(page.locator(".bill")).toContainText("discount: Comes often-US$5.00");
  await expect(page.locator(".bill")).toContainText("totalUS$16.24");
  await page.getByRole("button", { name: "No discount" }).click();
  await expect(page.locator(".bill")).toContainText("totalUS$21.65");
});
