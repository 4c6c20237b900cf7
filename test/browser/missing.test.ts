import { expect, type Page, test } from "@playwright/test";
import { finished } from "./room.ts";

/* Files of the page that do not come: the network of a shop has holes. */

// With the page's own worker in between nothing could be taken away on the way.
test.use({ serviceWorkers: "block" });

/** Breaks what is asked for off the first times. @returns how often it has been asked for */
async function breakOff(page: Page, files: string, times: number): Promise<() => number> {
  let asked = 0;
  await page.route(files, (route) => {
    asked += 1;
    return asked <= times ? route.abort() : route.continue();
  });
  return () => asked;
}

test("a room whose file does not come at first is there all the same", async ({ page }) => {
  const asked = await breakOff(page, "**/assets/MoneyRoom-*.js", 1);
  await page.goto("/money");
  await expect(page.locator("#answer h1")).toHaveText("Money");
  expect(asked()).toBe(2);
});

test("a room whose file does not come says so, and a button loads it once it can be had", async ({ page }) => {
  const asked = await breakOff(page, "**/assets/MoneyRoom-*.js", 2);
  await page.goto("/money");
  const broken = page.getByRole("alert");
  await expect(broken).toContainText("load the page again to go on");
  // The page was loaded again by itself once, and no more.
  await page.waitForTimeout(1000);
  expect(asked()).toBe(2);
  // The other rooms are there.
  await page.getByRole("link", { name: "Stock" }).click();
  await expect(page.locator("#answer h1")).toHaveText("Stock");
  await page.getByRole("link", { name: "Money" }).click();
  await broken.getByRole("button", { name: "Load the page again" }).click();
  await expect(page.locator("#answer h1")).toHaveText("Money");
});

test("without the server a room whose file is not here says so, and the page stays where it can go on", async ({ page }) => {
  await page.goto("/stock");
  await expect(page.locator("#answer h1")).toHaveText("Stock");
  await page.route("**/*", (route) => route.abort());
  await page.getByRole("link", { name: "Money" }).click();
  await expect(page.getByRole("alert").filter({ hasText: "load the page again" })).toBeVisible();
  await page.getByRole("link", { name: "Stock" }).click();
  await expect(page.locator("#answer h1")).toHaveText("Stock");
});

test("a page of which the first files do not come at first is there all the same", async ({ page }) => {
  const asked = await breakOff(page, "**/assets/App-*.js", 1);
  await page.goto("/");
  await expect(page.getByRole("heading", { name: "Today" })).toBeVisible();
  expect(asked()).toBe(2);
});

test("where the file of the computation breaks off once the plan is worked out all the same", async ({ page }) => {
  const asked = await breakOff(page, "**/assets/computeWorker-*.js", 1);
  await page.goto("/plan");
  await finished(page);
  expect(asked()).toBeGreaterThan(1);
});

test("where the file of the computation does not come it is said, and the plan goes on once it can be had", async ({ page }) => {
  const files = "**/assets/computeWorker-*.js";
  await page.route(files, (route) => route.abort());
  await page.goto("/plan");
  await expect(page.getByRole("alert")).toHaveText("The computation broke off: a file of the page could not be loaded");
  await page.unroute(files);
  await page.getByRole("button", { name: "Compute again" }).click();
  await finished(page);
});
