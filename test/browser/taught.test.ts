import { AxeBuilder } from "@axe-core/playwright";
import { expect, test } from "@playwright/test";
import { complaints } from "./room.ts";

/* What the shots seen in a house teach, from a lane to a finish plan. */

test("notes teach; what was learned is kept with the house, taken by a plan, and taken off again; axe finds nothing", async ({
  page,
  request,
}) => {
  test.setTimeout(180_000);
  const heard = complaints(page);
  const { items: notes } = await (await request.get("/api/shot-notes?limit=1")).json();
  const [{ laneId, houseId }] = notes;
  await page.goto(`/lanes/${laneId}`);
  const taught = page
    .locator("section.plate")
    .filter({ has: page.getByRole("heading", { name: "What this house has taught", exact: true }) });
  await expect(taught.getByText(/\d+ of \d+ notes of this house can be used/)).toBeVisible();
  await taught.getByRole("button", { name: "Learn from them" }).click();
  await taught.getByRole("button", { name: "Stop" }).click();
  await expect(taught.getByText("Stopped. Nothing was learned.")).toBeVisible();
  await taught.getByRole("button", { name: "Learn from them" }).click();
  const rows = taught.getByRole("table", { name: "Before and now" }).getByRole("row");
  await expect(rows).toHaveCount(16, { timeout: 90_000 });
  await expect(rows.filter({ hasText: "friction on the dry" }).getByRole("img")).toHaveAttribute(
    "aria-label",
    /assumed 0\.8\d–1\.1\d, now [01]\.\d\d/,
  );
  await taught.getByRole("button", { name: "Keep with the house" }).click();
  await expect(taught.getByText(/^Kept with the house/)).toBeVisible();
  const kept = await (await request.get(`/api/houses/${houseId}`)).json();
  expect(kept.taught.house.ids).toContain("house.dry");
  for (const look of ["Paper", "Bench, dark"]) {
    await page.getByText(look, { exact: true }).click();
    expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([]);
  }
  await page.setViewportSize({ width: 360, height: 800 });
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360);
  await page.setViewportSize({ width: 1440, height: 900 });
  await page.goto("/plan");
  const choice = page.getByLabel("What a house has taught");
  await choice.selectOption(houseId);
  const said = page.getByText(/^Corrected by \d+ shots? seen in this house/);
  await expect(said.first()).toBeVisible({ timeout: 60_000 });
  await choice.selectOption({ label: "nothing: the usual ranges" });
  await expect(said).toHaveCount(0, { timeout: 60_000 });
  await page.goto(`/lanes/${laneId}`);
  await taught.getByRole("button", { name: "Take off the house" }).click();
  await expect(taught.getByText(/With the house is kept/)).toHaveCount(0);
  expect(heard).toEqual([]);
});
