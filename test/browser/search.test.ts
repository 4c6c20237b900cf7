import { AxeBuilder } from "@axe-core/playwright";
import { expect, test } from "@playwright/test";

/* Search from anywhere. */

test("a slash opens the search in any room; a ball, a bowler and an open ticket are found and followed by keyboard; in a field a slash is a slash", async ({
  page,
  request,
}) => {
  const { items } = await (await request.get("/api/queue")).json();
  const { ticket, ballName, bowlerName } = items.find((item: { bowlerName: string | null }) => item.bowlerName !== null);
  await page.goto("/stock");
  await expect(page.locator("#answer h1")).toBeVisible();
  await page.keyboard.press("/");
  const search = page.getByRole("dialog", { name: "Search the shop" });
  await expect(search.getByLabel("Name, serial number or telephone")).toBeFocused();
  await page.keyboard.type(ballName);
  await expect(search.getByRole("link", { name: new RegExp(`^${ballName}, `) })).toBeVisible();
  const { violations } = await new AxeBuilder({ page }).include("dialog").analyze();
  expect(violations.map((v) => v.id)).toEqual([]);
  await search.getByRole("link", { name: new RegExp(`^${ballName}, `) }).focus();
  await page.keyboard.press("Enter");
  await page.waitForURL(`**/tickets/${ticket.id}`);
  await expect(search).toHaveCount(0);

  await page.getByRole("button", { name: "Search", exact: true }).click();
  await page.keyboard.type(bowlerName.split(" ")[1]);
  await search
    .getByRole("link", { name: new RegExp(bowlerName) })
    .first()
    .click();
  await page.waitForURL(/\/bowlers\//);

  await page.goto("/intake");
  await page.getByRole("combobox", { name: "Name, phone or the end of a serial" }).pressSequentially("7/2");
  await expect(page.getByRole("combobox", { name: "Name, phone or the end of a serial" })).toHaveValue("7/2");
  await expect(page.getByRole("dialog")).toHaveCount(0);
  await page.keyboard.press("Escape");
});
