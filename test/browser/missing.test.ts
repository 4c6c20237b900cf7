import { expect, test } from "@playwright/test";
import { finished } from "./room.ts";

/* Files of the page that do not come: the network of a shop has holes. */

// With the page's own worker in between nothing could be taken away on the way.
test.use({ serviceWorkers: "block" });

test("a room whose file does not come says so, and a button loads it once it can be had", async ({ page }) => {
  await page.route("**/assets/MoneyRoom-*.js", (route) => route.abort());
  await page.goto("/money");
  const broken = page.getByRole("alert");
  await expect(broken).toContainText("load the page again to go on");
  await page.unrouteAll();
  await broken.getByRole("button", { name: "Load the page again" }).click();
  await expect(page.locator("#answer h1")).toHaveText("Money");
});

test("where the file of the computation does not come it is said, and the plan goes on once it can be had", async ({ page }) => {
  await page.route("**/assets/computeWorker-*.js", (route) => route.abort());
  await page.goto("/plan");
  await expect(page.getByRole("alert")).toHaveText("The computation broke off: a file of the page could not be loaded");
  await page.unrouteAll();
  await page.getByRole("button", { name: "Compute again" }).click();
  await finished(page);
});
