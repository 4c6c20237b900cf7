import { AxeBuilder } from "@axe-core/playwright";
import { type APIRequestContext, expect, type Page, test } from "@playwright/test";
import { complaints } from "./room.ts";

/* The plan of a bag: a small session, so that it is soon worked out. */

/** A bowler with balls in use. */
async function somebodysBag(request: APIRequestContext): Promise<string> {
  const { items } = await (await request.get("/api/balls?limit=200")).json();
  const owners = items.filter(
    (ball: { state: string; cover: string; bowlerId: string | null }) =>
      ball.state === "in use" && ball.bowlerId !== null && ball.cover !== "polyester",
  );
  return owners[0].bowlerId;
}

async function smallSession(page: Page): Promise<void> {
  await page.getByLabel("Games", { exact: true }).fill("1");
  await page.getByLabel("The ball may be changed").selectOption("1");
  await page.getByLabel("Others on the same lanes").fill("1");
  await page.getByLabel("of them left-handed").fill("0");
}

async function workOut(page: Page): Promise<void> {
  await page.getByRole("button", { name: "Work it out" }).click();
  await expect(page.getByRole("button", { name: "Work it out" })).toBeVisible({ timeout: 90_000 });
  await expect(page.getByRole("heading", { name: /strikes \(.*\) in 10 first balls/ })).toBeVisible();
}

test("a bag is planned from the shop's records; what does not fit is answered beside its field; the form survives a reload", async ({
  page,
  request,
}) => {
  test.setTimeout(180_000);
  const heard = complaints(page);
  const bowlerId = await somebodysBag(request);
  await page.goto(`/bowlers/${bowlerId}`);
  await page.getByRole("link", { name: "Plan the bag for a session" }).click();
  await smallSession(page);
  await page.getByLabel("Shots of practice on each lane").fill("-3");
  await page.getByRole("button", { name: "Work it out" }).click();
  await expect(page.getByText(/0 ≤ x ≤ 60/)).toBeVisible();
  await page.reload();
  await expect(page.getByLabel("Shots of practice on each lane")).toHaveValue("-3");
  await page.getByLabel("Shots of practice on each lane").fill("2");
  await workOut(page);
  await expect(page.getByRole("img", { name: "The bag through the session" })).toBeVisible();
  await expect(page.getByRole("heading", { name: "Why this ball when" })).toBeVisible();
  const stages = page.getByRole("table", { name: "Stage by stage" });
  await expect(stages.getByRole("row")).toHaveCount(2);
  // The customer's part tells no chances.
  const forBowler = page.locator("section", { has: page.getByRole("heading", { name: "For the bowler" }) }).last();
  await expect(forBowler).not.toContainText(/%|in 100|strike/);
  await page.getByLabel("Games", { exact: true }).fill("2");
  await expect(page.getByText("The form has changed since: work it out again.")).toBeVisible();
  expect(heard).toEqual([]);
});

test("the answer is one page of paper, fits 360 px, and axe finds nothing in either look", async ({ page, request }) => {
  test.setTimeout(180_000);
  await page.goto(`/bags/${await somebodysBag(request)}`);
  await smallSession(page);
  await workOut(page);
  const pdf = (await page.pdf({ preferCSSPageSize: true, printBackground: true })).toString("latin1");
  expect(pdf.match(/\/Type\s*\/Page[^s]/g)).toHaveLength(1);
  for (const look of ["Paper", "Bench, dark"]) {
    await page.getByText(look, { exact: true }).click();
    expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([]);
  }
  await page.setViewportSize({ width: 360, height: 800 });
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360);
});

test("long work can be stopped", async ({ page, request }) => {
  await page.goto(`/bags/${await somebodysBag(request)}`);
  await page.getByRole("button", { name: "Work it out" }).click();
  await page.getByRole("button", { name: "Stop" }).click();
  await expect(page.getByText("Stopped. What was found so far stands.")).toBeVisible();
});
