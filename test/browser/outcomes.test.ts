import { AxeBuilder } from "@axe-core/playwright";
import { type APIRequestContext, expect, test } from "@playwright/test";
import { complaints } from "./room.ts";

/* Whether the work did what was said: one press, and what it adds up to. */

interface Kept {
  readonly id: string;
  readonly readyAt: string | null;
  readonly outcome: { readonly answer: string } | null;
}

async function readyAndUntold(request: APIRequestContext): Promise<string> {
  const { items } = (await (await request.get("/api/tickets?limit=200")).json()) as { readonly items: readonly Kept[] };
  const found = items.find(({ readyAt, outcome }) => readyAt !== null && outcome === null);
  if (found === undefined) throw new Error("no ticket of the demonstration is ready and untold");
  return found.id;
}

test("one press on a ticket that is ready keeps what the bowler says, another corrects it; the shares count it", async ({
  page,
  request,
}) => {
  const heard = complaints(page);
  const id = await readyAndUntold(request);
  const before = await (await request.get("/api/outcomes")).json();
  await page.goto(`/tickets/${id}`);
  const asked = page.getByRole("group", { name: "Did it work?" });
  await asked.getByRole("button", { name: "no", exact: true }).click();
  await expect(asked.getByText(/^no, told /)).toBeVisible();
  await asked.getByRole("button", { name: "as said" }).click();
  await expect(asked.getByText(/^as said, told /)).toBeVisible();
  expect((await (await request.get(`/api/tickets/${id}`)).json()).outcome.answer).toBe("as said");
  const after = await (await request.get("/api/outcomes")).json();
  expect(after.all.of).toBe(before.all.of + 1);
  expect(after.all.held).toBe(before.all.held + 1);
  await page.getByRole("link", { name: "What held" }).click();
  await expect(page.getByText(`of ${after.all.of}`)).toBeVisible();
  expect(heard).toEqual([]);
});

test("shares stand by cover, by complaint and against the odds that were told; axe finds nothing; nothing runs out at 360 px", async ({
  page,
}) => {
  await page.goto("/money");
  await page.getByRole("link", { name: "What held" }).click();
  for (const name of ["By cover", "By complaint", "The odds that were told"])
    await expect(page.getByRole("table", { name }).getByRole("row").nth(1)).toBeVisible();
  for (const look of ["Paper", "Bench, dark"]) {
    await page.getByText(look, { exact: true }).click();
    expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([]);
  }
  await page.setViewportSize({ width: 360, height: 800 });
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360);
});
