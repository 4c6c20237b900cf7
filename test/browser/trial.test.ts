import { AxeBuilder } from "@axe-core/playwright";
import { expect, test } from "@playwright/test";
import { complaints, openPlan } from "./room.ts";

test("a trial: the plan's line, shots of two finishes, where the worlds have them, a file; and the plan is weighed by it", async ({
  page,
}) => {
  test.setTimeout(120_000);
  const heard = complaints(page);
  await openPlan(page);
  await page.getByRole("radio", { name: "trial" }).check({ force: true });
  await page.getByRole("button", { name: /^Play the plan's: laid down on \d+/ }).click();
  await expect(page.getByText(/^Every shot is laid down on board \d+/)).toBeVisible();
  const finish = (name: string) => page.getByRole("region", { name, exact: true });
  const dull = finish("500");
  await dull.getByRole("textbox", { name: "Board at the pins" }).fill("99");
  await dull.getByRole("button", { name: "Add the shot" }).click();
  await expect(dull.getByText("a board from 0 to 40")).toBeVisible();
  for (const [name, boards] of [
    ["500", ["19", "18.5", "20"]],
    ["4000 + polish", ["16.5", "17"]],
  ] as const)
    for (const board of boards) {
      await finish(name).getByRole("textbox", { name: "Board at the pins" }).fill(board);
      await finish(name).getByRole("textbox", { name: "Board at the pins" }).press("Enter");
    }
  await expect(dull.getByText("3 of 10")).toBeVisible();
  const picture = page.locator(".trial-picture");
  await expect(picture).toHaveAccessibleName(/500: arrived on 19\.2; the worlds had .* before, .* now; 4000 \+ polish: arrived on 16\.8/, {
    timeout: 60_000,
  });
  await expect(page.getByText(/Before these shots \d+ worlds counted/)).toBeVisible();
  await dull.getByRole("button", { name: "Take the shot on board 20.0 away" }).click();
  await expect(dull.getByText("2 of 10")).toBeVisible();
  const { violations } = await new AxeBuilder({ page }).include(".trial").analyze();
  expect(violations.map(({ id }) => id)).toEqual([]);
  const download = page.waitForEvent("download");
  await page.getByRole("button", { name: "Save the trial as a file" }).click();
  expect((await download).suggestedFilename()).toBe("gritwright-trial.json");
  await page.reload();
  await page.getByRole("radio", { name: "trial" }).check({ force: true });
  await expect(dull.getByText("2 of 10")).toBeVisible();
  await page.getByRole("button", { name: "See the plan with it" }).click();
  await expect(page.locator(".pick-sentence")).toBeVisible({ timeout: 60_000 });
  expect(heard).toEqual([]);
});
