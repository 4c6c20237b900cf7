import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { readFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { AxeBuilder } from "@axe-core/playwright";
import { expect, type Page, test } from "@playwright/test";
import { ownServer } from "./shopServer.ts";

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

test("what is typed while the last movement is still being read again is not wiped away", async ({ page }) => {
  // The lists of a write are read again one beside the other: here what came and went is the slow one.
  await page.route("**/api/stock-movements?*", async (route) => {
    await new Promise((resolve) => setTimeout(resolve, 1500));
    await route.continue();
  });
  await page.goto("/stock");
  await page.getByRole("button", { name: /^Cleaner/ }).click();
  const cleaner = page.getByRole("group", { name: "Cleaner" });
  await cleaner.locator("summary", { hasText: "Came and went" }).click();
  const amount = page.getByLabel("How much, mL");
  await amount.fill("1000");
  await page.getByRole("button", { name: "Counted", exact: true }).click();
  await expect(cleaner.getByText("1000 mL left")).toBeVisible();
  await amount.fill("40");
  await expect(page.getByRole("status").filter({ hasText: "Undo" })).toBeVisible();
  await expect(amount).toHaveValue("40");
  await page.getByRole("button", { name: "Thrown away", exact: true }).click();
  await expect(cleaner.getByText("960 mL left")).toBeVisible();
  await expect(amount).toHaveValue("");
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
  const payments = await savedText(page, () => page.getByRole("button", { name: "As CSV: Payments and refunds" }).click());
  const [heads, newest] = payments.split("\r\n");
  expect(heads).toBe("when,from,amount,how");
  expect(newest).toMatch(/,'=Invented payer,'-US\$10\.00,"given back, card, too dear"$/);
  await page.getByLabel("To", { exact: true }).fill("2020-01-01");
  await expect(page.getByText("The last day does not fit the first.")).toBeVisible();
  await page.getByRole("button", { name: "last month" }).click();
  await expect(page.getByText("Taken less given back")).toBeVisible();
});

test("settings, people and prices are changed in place; what is not allowed is answered; who has left is no longer offered", async ({
  page,
  request,
}) => {
  await page.goto("/shop");
  await page.getByRole("button", { name: "Change: This shop" }).click();
  await page.getByLabel("Time zone").fill("Nowhere/Land");
  await page.getByRole("button", { name: "Keep", exact: true }).click();
  await expect(page.locator(".field-problem")).toContainText("America/Chicago");
  await page.getByLabel("Time zone").fill("America/Chicago");
  await page.getByLabel("Tax, %").fill("8,375");
  await page.getByLabel("Speed in").selectOption("km/h");
  await page.getByRole("button", { name: "Keep", exact: true }).click();
  await expect(page.getByText("8.375 %").first()).toBeVisible();
  const settings = await (await request.get("/api/settings")).json();
  expect([settings.taxMillipercent, settings.speedUnit, settings.zone]).toEqual([8375, "km/h", "America/Chicago"]);

  await page.getByRole("button", { name: "Add a person" }).click();
  const adding = page.getByRole("region", { name: "Add a person" });
  await adding.getByLabel("Name").fill("Invented Newcomer");
  await adding.getByLabel("Initials").fill("TOOLONG");
  await adding.getByRole("button", { name: "Keep" }).click();
  await expect(adding.locator(".field-problem")).toContainText("1 to 5 letters");
  await adding.getByLabel("Initials").fill("IH");
  await adding.getByRole("button", { name: "Keep" }).dblclick();
  await expect(page.getByLabel("At work").locator("option", { hasText: "Invented Newcomer" })).toHaveCount(1);
  await page.getByRole("button", { name: "Change: Invented Newcomer" }).click();
  await page.getByLabel("Works here?").selectOption("has left");
  await page.getByRole("button", { name: "Keep", exact: true }).click();
  await expect(page.getByLabel("At work").locator("option", { hasText: "Invented Newcomer" })).toHaveCount(0);

  await page.getByRole("button", { name: "Add a price" }).click();
  const price = page.getByRole("region", { name: "Add a price" });
  await price.getByLabel("What for").fill("Invented polish by hand");
  await price.getByLabel("Price before tax").fill("cheap");
  await price.getByRole("button", { name: "Keep" }).click();
  await expect(price.locator(".field-problem")).toContainText("cents");
  await price.getByLabel("Price before tax").fill("12.50");
  await price.getByRole("button", { name: "Keep" }).click();
  await expect(page.getByRole("row", { name: /Invented polish by hand/ })).toContainText("US$12.50");
  await page.goto("/intake");
  await page.getByRole("button", { name: "New customer" }).click();
  await page.getByRole("button", { name: "Set a price: New ball" }).click();
  await expect(page.getByLabel("Work charged").locator("option", { hasText: "Invented polish by hand" })).toHaveCount(1);
});

test("a backup is made, read through and saved; everything is taken out", async ({ page }) => {
  await page.goto("/shop");
  await page.getByRole("button", { name: "Make a backup now" }).click();
  await page
    .getByRole("button", { name: /^Verify/ })
    .first()
    .click();
  await expect(page.getByText("every checksum is right")).toBeVisible();
  const backup = page.waitForEvent("download");
  await page
    .getByRole("button", { name: /^Save .*zip/ })
    .first()
    .click();
  const bytes = await readFile(await (await backup).path());
  // A ZIP file begins with PK\3\4 (PKWARE APPNOTE 4.3.7).
  expect([...bytes.subarray(0, 4)]).toEqual([0x50, 0x4b, 3, 4]);
  await page.getByRole("button", { name: "Take everything out" }).click();
  const all = page.waitForEvent("download");
  await page.getByRole("button", { name: "Save everything" }).click();
  expect((await all).suggestedFilename()).toBe("everything.zip");
});

test("a backup that failed is said on Today and in Shop, until one succeeds", async ({ page }) => {
  const data = mkdtempSync(join(tmpdir(), "gritwright-failed-"));
  const server = await ownServer(data, 0, ["--own"]);
  try {
    // What is in the way of the folder of its photos keeps a backup from being made.
    const backups = join(data, "shop", "backups");
    mkdirSync(backups, { recursive: true });
    writeFileSync(join(backups, "blobs"), "in the way");
    await page.goto(`${server.address}/shop`);
    await page.getByRole("button", { name: "Make a backup now" }).click();
    await expect(page.getByText(/^The backup of .* failed: /)).toBeVisible();
    await page.goto(`${server.address}/`);
    await expect(page.getByText("The last backup failed.")).toBeVisible();
    await page.getByRole("link", { name: "The room Shop says why" }).click();
    rmSync(join(backups, "blobs"));
    await page.getByRole("button", { name: "Make a backup now" }).click();
    await expect(page.getByRole("button", { name: /^Verify/ })).toHaveCount(1);
    await expect(page.getByText(/^The backup of .* failed: /)).toHaveCount(0);
    await page.goto(`${server.address}/`);
    await expect(page.getByRole("heading", { name: "Today" })).toBeVisible();
    await expect(page.getByText("The last backup failed.")).toHaveCount(0);
  } finally {
    await server.stop();
    rmSync(data, { recursive: true });
  }
});

test("a list of customers is looked at, put right, taken in once, and taken out again", async ({ page, request }) => {
  const names = async () => {
    const { bowlers } = await (await request.get("/api/search?words=Listed")).json();
    return bowlers.map(({ name }: { name: string }) => name).sort();
  };
  const file = (text: string) => ({ name: "list.csv", mimeType: "text/csv", buffer: Buffer.from(text) });
  await page.goto("/shop");
  await page.getByRole("button", { name: "Take in a list" }).click();
  await page.getByLabel("File (CSV)").setInputFiles(file("Kunde;Tel;hand\nListed One;555-0150;right\nListed Two;555-0151;middle\n"));
  await page.getByLabel("“Kunde” is").selectOption("name");
  await page.getByLabel("“Tel” is").selectOption("phone");
  const bad = page.getByRole("row", { name: /middle/ });
  await expect(bad).toContainText("3");
  await expect(bad).toContainText("one of right, left");
  await expect(page.getByRole("button", { name: /^Take in 2/ })).toBeDisabled();
  expect(await names()).toEqual([]);
  await page.getByLabel("File (CSV)").setInputFiles(file("name;phone\nListed One;555-0150\nListed Two;555-0151\n"));
  await page.getByRole("button", { name: "Take in 2 rows" }).dblclick();
  await expect(page.getByText("2 taken in, 0 were there already.")).toBeVisible();
  expect(await names()).toEqual(["Listed One", "Listed Two"]);
  await page.reload();
  await page.getByRole("button", { name: "Take in a list" }).click();
  await page.getByRole("button", { name: "Take them out again" }).click();
  await expect(page.getByText("2 taken out again.")).toBeVisible();
  expect(await names()).toEqual([]);
});

test("every assumption and caution is there with its mark, and the trail says who did what", async ({ page }) => {
  await page.goto("/shop");
  await page.getByRole("button", { name: "What the model assumes" }).click();
  await page.getByLabel("Find an assumption").fill("rolling resistance");
  const row = page.getByRole("row", { name: /rolling resistance/ });
  await expect(row).toContainText("0.003");
  await expect(row).toContainText("chosen");
  await page.getByRole("button", { name: "Cautions" }).click();
  await expect(page.locator(".caution-list li").first()).toContainText("Look the ball over first.");
  await page.getByRole("button", { name: "Who did what" }).click();
  await page.getByLabel("Show").selectOption("ticket");
  await expect(page.getByRole("link", { name: "ticket" }).first()).toBeVisible();
  await page.getByRole("button", { name: "Earlier" }).click();
  await expect(page.locator(".plain-table", { hasText: "Who did what" })).toHaveCount(2);
});

test("without the server what was read stays in view, what was typed stays, and pressing again afterwards keeps it once", async ({
  browser,
}) => {
  const data = mkdtempSync(join(tmpdir(), "gritwright-away-"));
  const first = await ownServer(data, 0);
  const context = await browser.newContext({ serviceWorkers: "block" });
  const page = await context.newPage();
  try {
    await page.goto(`${first.address}/stock`);
    const pad = page.getByRole("button", { name: /^Pad 360/ });
    await pad.click();
    const { items } = await (await page.request.get(`${first.address}/api/stock-items?limit=200`)).json();
    const before = items.find(({ name }: { name: string }) => name === "Pad 360");
    await page.getByLabel("How much, uses").fill("5");
    await first.kill();
    await page.getByRole("button", { name: "Delivered", exact: true }).click();
    await expect(page.getByRole("alert").filter({ hasText: "does not answer" })).toBeVisible();
    await expect(page.getByLabel("How much, uses")).toHaveValue("5");
    await expect(pad).toBeVisible();
    const second = await ownServer(data, Number(new URL(first.address).port));
    try {
      await page.getByRole("button", { name: "Delivered", exact: true }).click();
      await expect(page.getByText("delivered: +5. Kept.")).toBeVisible();
      const after = await (await page.request.get(`${second.address}/api/stock-items/${before.id}`)).json();
      expect(after.quantity).toBe(before.quantity + 5);
    } finally {
      await second.kill();
    }
  } finally {
    await context.close();
    rmSync(data, { recursive: true, force: true });
  }
});

test("today names whose balls are due by games, with the way to bowler and ball", async ({ page, request }) => {
  const bowler = await (await request.post("/api/bowlers", { data: { name: "Invented Dull-Track", phone: "555-0187" } })).json();
  const at = new Date().toISOString();
  const made = await request.post("/api/balls", {
    data: { name: "Invented Shiner", cover: "solid", bowlerId: bowler.id, boxFinish: "1000", games: [{ at, games: 9000 }] },
  });
  const ball = await made.json();
  await page.goto("/");
  await expect(page.getByRole("heading", { name: "Due by games" })).toBeVisible();
  await expect(page.getByText("555-0187")).toBeVisible();
  await page.getByRole("link", { name: /^Invented Shiner: 9000 games, due at about/ }).click();
  await page.waitForURL(`**/balls/${ball.id}`);
});

for (const look of ["paper", "bench"] as const) {
  test(`nothing for axe to find behind the counter, look ${look}, and nothing runs out of the page`, async ({ page }) => {
    test.setTimeout(120_000);
    await page.addInitScript((chosen) => localStorage.setItem("gritwright.look", chosen), look);
    for (const path of ["/stock", "/money", "/shop"]) {
      await page.goto(path);
      await expect(page.locator("#answer h2").first()).toBeVisible();
      const folds = page.locator(".fold-trigger[aria-expanded=false]");
      for (let left = await folds.count(); left > 0; left = await folds.count()) await folds.first().click();
      const { violations } = await new AxeBuilder({ page }).analyze();
      expect(violations.map((v) => `${path} ${v.id}: ${v.nodes.map((n) => n.target.join(" ")).join(", ")}`)).toEqual([]);
      for (const width of [360, 820, 1440]) {
        await page.setViewportSize({ width, height: 900 });
        expect(await page.evaluate(() => document.documentElement.scrollWidth), `${path} at ${width}`).toBeLessThanOrEqual(width);
      }
    }
  });
}
