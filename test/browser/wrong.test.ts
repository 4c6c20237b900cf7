import { AxeBuilder } from "@axe-core/playwright";
import { type APIRequestContext, expect, test } from "@playwright/test";
import { complaints } from "./room.ts";

/* Finding what is wrong, from a ticket. */

async function someTicket(request: APIRequestContext): Promise<{ readonly id: string; readonly ballId: string }> {
  const { items } = await (await request.get("/api/queue?limit=50")).json();
  return items[0].ticket;
}

test("from a ticket to causes with their evidence; a step that was taken moves them; what came out goes to the ticket", async ({
  page,
  request,
}) => {
  const heard = complaints(page);
  const ticket = await someTicket(request);
  await page.goto(`/tickets/${ticket.id}`);
  await page.getByRole("link", { name: "What is wrong?" }).click();
  // What is ticked is read at once: the room has to be there.
  await expect(page.getByRole("group", { name: "What hurts" }).getByRole("checkbox").first()).toBeVisible();
  for (const box of await page.getByRole("group", { name: "What hurts" }).getByRole("checkbox", { checked: true }).all())
    await box.uncheck();
  await expect(page.getByText("Say what hurts: then the answer stands here.")).toBeVisible();
  await page.getByLabel("It does nothing at the end of the lane.").check();
  await page.getByText("only this one", { exact: true }).click();
  const first = page.locator(".causes .cause-name").first();
  await expect(first).toBeVisible();
  await page.locator(".causes summary").first().click();
  await expect(page.getByText(/only this ball changed/).first()).toBeVisible();
  const chances = () => page.locator(".causes .cause-chance").allTextContents();
  const before = await chances();
  await page
    .getByRole("button", { name: /: (It is better|Off what they should be|That one runs right)$/ })
    .first()
    .click();
  await expect(page.getByRole("button", { name: "Take back" })).toBeVisible();
  expect(await chances()).not.toEqual(before);
  await page.reload();
  await expect(page.getByRole("button", { name: "Take back" })).toBeVisible();
  await page.getByRole("button", { name: "Keep as the ticket's findings" }).click();
  await expect(page.getByRole("button", { name: "Kept with the ticket." })).toBeVisible();
  const kept = await (await request.get(`/api/tickets/${ticket.id}`)).json();
  expect(kept.findings).toContain(await first.textContent());
  expect(heard).toEqual([]);
});

test("when all balls changed no sanding is advised, and it is said; bad input is answered beside its field", async ({ page, request }) => {
  const { ballId } = await someTicket(request);
  await page.goto(`/wrong?ball=${ballId}`);
  await page.getByLabel("It hooks less than it did.").check();
  await page.getByText("all of them", { exact: true }).click();
  await expect(page.getByText("All balls changed: no ball is sanded for it.")).toBeVisible();
  await expect(page.getByText(/Put a pad on/)).toHaveCount(0);
  await page.getByLabel("Reading in the track, µin").fill("-4");
  await expect(page.getByText(/0 < x ≤ 1000/)).toBeVisible();
});

test("without a ball in the address one is found; axe finds nothing in either look, nothing runs out at 360 px", async ({
  page,
  request,
}) => {
  await page.goto("/wrong");
  await expect(page.getByRole("heading", { name: "Which ball?" })).toBeVisible();
  const { ballId } = await someTicket(request);
  await page.goto(`/wrong?ball=${ballId}`);
  await page.getByLabel("It knocks or sounds wrong.").check();
  await expect(page.locator(".causes")).toBeVisible();
  for (const look of ["Paper", "Bench, dark"]) {
    await page.getByText(look, { exact: true }).click();
    expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([]);
  }
  await page.setViewportSize({ width: 360, height: 800 });
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360);
});

test("a crack that a step finds stops everything, and is written on the ball", async ({ page, request }) => {
  const { ballId } = await someTicket(request);
  await page.goto(`/wrong?ball=${ballId}`);
  await page.getByLabel("It knocks or sounds wrong.").check();
  await page.getByRole("button", { name: /^Look and listen for a crack.*: There is one$/ }).click();
  await expect(page.locator(".stop-line").getByText(/no spinner, no pad, no heat, no more throwing/)).toBeVisible();
  // Nothing is left to be done with the ball, only what was found to be taken back.
  await expect(page.locator(".next-steps li")).toHaveCount(0);
  await page.getByRole("button", { name: "Write the crack on the ball" }).click();
  await expect(page.getByText("The crack is on the ball’s record")).toBeVisible();
  const ball = await (await request.get(`/api/balls/${ballId}`)).json();
  expect(ball.found.map(({ what }: { what: string }) => what)).toContain("crack");
  // Other tests work on this shop's balls.
  const uncracked = ball.found.filter(({ what }: { what: string }) => what !== "crack");
  const mended = await request.patch(`/api/balls/${ballId}`, { data: { found: uncracked }, headers: { "If-Match": `"${ball.version}"` } });
  expect(mended.ok()).toBe(true);
});

test("where all balls changed no ball is asked for, and while scores count nothing but a towel touches one", async ({ page }) => {
  await page.goto("/wrong");
  await page.getByRole("link", { name: "No one ball: all of them changed" }).click();
  await page.getByLabel("It skids past the spot.").check();
  await expect(page.locator(".causes")).toContainText("The lanes are oilier than usual");
  await expect(page.locator("q")).not.toBeEmpty();
  await page.getByText("while scores count", { exact: true }).click();
  await expect(page.getByText(/^While scores count only what is listed below/)).toBeVisible();
  await expect(page.getByText(/Clean the ball|Draw the oil out|Put a pad on/)).toHaveCount(0);
});
