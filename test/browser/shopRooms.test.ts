import { readFile } from "node:fs/promises";
import { AxeBuilder } from "@axe-core/playwright";
import { expect, type Page, test } from "@playwright/test";

/* The rooms behind the counter: stock, money, the shop's own settings. */

async function savedText(page: Page, press: () => Promise<void>): Promise<string> {
  const download = page.waitForEvent("download");
  await press();
  return readFile(await (await download).path(), "utf8");
}

test("a new item is kept once; delivered, thrown away and counted in two presses each; a mistake is taken back", async ({
  page,
  request,
}) => {
  await page.goto("/stock");
  await page.getByRole("button", { name: /A new item/ }).click();
  await page.getByRole("button", { name: "Put it into the stock" }).click();
  await expect(page.locator(".field-problem")).toContainText("1 to 200 letters");
  await page.getByLabel("What it is called here").fill("=Invented pad");
  await page.getByLabel("Number of the abrasive").fill("700");
  await page.getByLabel("Order more at").fill("20");
  await page.getByLabel("How much is there now").fill("12");
  await page.getByRole("button", { name: "Put it into the stock" }).dblclick();
  const line = page.getByRole("button", { name: /=Invented pad/ });
  await expect(line).toContainText("12 uses left · low, order at 20");
  await line.click();
  await page.getByLabel("How much, uses").fill("100");
  await page.getByRole("button", { name: "Delivered", exact: true }).click();
  await expect(page.getByText("112 uses left")).toBeVisible();
  await page.getByRole("button", { name: "Undo" }).click();
  await expect(page.getByText("12 uses left · low, order at 20")).toBeVisible();
  await page.getByLabel("How much, uses").fill("2");
  await page.getByRole("button", { name: "Thrown away", exact: true }).click();
  await expect(page.getByText("10 uses left")).toBeVisible();
  await page.getByLabel("How much, uses").fill("7");
  await page.getByRole("button", { name: "Counted", exact: true }).click();
  await expect(page.getByText("7 uses left")).toBeVisible();
  await page.locator("summary", { hasText: "Came and went" }).click();
  await expect(page.getByRole("cell", { name: "−3" })).toBeVisible();
  const { items } = await (await request.get("/api/stock-items?limit=200")).json();
  const kept = items.filter(({ name }: { name: string }) => name === "=Invented pad");
  expect(kept.map(({ quantity }: { quantity: number }) => quantity)).toEqual([7]);
  const saved = await savedText(page, () => page.getByRole("button", { name: "Save as CSV" }).click());
  expect(saved).toContain("'=Invented pad,pad,700,7,uses,20,0");
});

test("an open balance is taken in part and the rest stays; a payment is given back once; the days add it up and the CSV holds it", async ({
  page,
  request,
}) => {
  const bowler = await (await request.post("/api/bowlers", { data: { name: "=Invented payer" } })).json();
  const charges = [{ what: "Invented work", eachCents: 5000 }];
  const arrivedAt = new Date().toISOString();
  await request.post("/api/visits", { data: { bowlerId: bowler.id, arrivedAt, currency: "USD", charges } });
  await page.goto("/money");
  await page.getByRole("button", { name: "Take a payment of =Invented payer" }).click();
  await page.getByLabel("Amount, USD").fill("60");
  await expect(page.locator(".field-problem")).toContainText("at most US$50.00");
  await page.getByLabel("Amount, USD").fill("30,00");
  await page.getByRole("button", { name: "Take", exact: true }).first().dblclick();
  await expect(page.getByRole("row", { name: /=Invented payer/ }).first()).toContainText("US$20.00");
  await page.getByRole("button", { name: "Give back of US$30.00 to =Invented payer" }).click();
  await page.getByLabel("Amount, USD").fill("10");
  await page.getByLabel("Why").fill("too dear");
  await page.locator(".amount-form").getByRole("button", { name: "Give back" }).click();
  await expect(page.getByRole("cell", { name: "given back, card, too dear" })).toBeVisible();
  await expect(page.getByRole("row", { name: /Invented work/ })).toContainText("US$20.00");
  const saved = await savedText(page, () => page.getByRole("button", { name: "Save as CSV" }).click());
  expect(saved).toContain("paid,'=Invented payer,30,USD,card,");
  expect(saved).toContain("given back,'=Invented payer,-10,USD,card,too dear");
  await page.getByLabel("To", { exact: true }).fill("2020-01-01");
  await expect(page.getByText("The last day does not fit the first.")).toBeVisible();
  await page.getByRole("button", { name: "last month" }).click();
  await expect(page.getByText("Taken less given back")).toBeVisible();
});

for (const look of ["paper", "bench"] as const) {
  test(`nothing for axe to find behind the counter, look ${look}, and nothing runs out of the page`, async ({ page }) => {
    test.setTimeout(120_000);
    await page.addInitScript((chosen) => localStorage.setItem("gritwright.look", chosen), look);
    for (const path of ["/stock", "/money"]) {
      await page.goto(path);
      await expect(page.locator("#answer h2").first()).toBeVisible();
      const folds = page.locator(".fold-trigger[aria-expanded=false]");
      if ((await folds.count()) > 0) await folds.first().click();
      const { violations } = await new AxeBuilder({ page }).analyze();
      expect(violations.map((v) => `${path} ${v.id}: ${v.nodes.map((n) => n.target.join(" ")).join(", ")}`)).toEqual([]);
      for (const width of [360, 820, 1440]) {
        await page.setViewportSize({ width, height: 900 });
        expect(await page.evaluate(() => document.documentElement.scrollWidth), `${path} at ${width}`).toBeLessThanOrEqual(width);
      }
    }
  });
}
