import { readFile } from "node:fs/promises";
import { AxeBuilder } from "@axe-core/playwright";
import { expect, test } from "@playwright/test";
import { chances, complaints, finished, openFinishedPlan, openPlan } from "./room.ts";

test("opens with an example's plan: a pick, a chart, a table, no complaint", async ({ page }) => {
  const heard = complaints(page);
  await openFinishedPlan(page);
  await expect(page.locator(".pick-sentence")).toHaveText(/^Take \d+/);
  await expect(page.locator(".lane-chart svg")).toHaveAttribute("role", "img");
  const found = await chances(page);
  expect(found.length).toBeGreaterThan(3);
  for (const chance of found) expect(chance).toBeGreaterThan(0);
  expect(heard).toEqual([]);
});

test("a changed bowler changes the answer; undo brings the first one back, figure for figure", async ({ page }) => {
  // Three whole plans, on a machine that may be computing others.
  test.setTimeout(150_000);
  await openFinishedPlan(page);
  const first = await page.locator(".candidates").textContent();
  await page.getByRole("textbox", { name: "Launch speed" }).fill("20");
  await finishedAnew(page, first);
  const second = await page.locator(".candidates").textContent();
  expect(second).not.toBe(first);
  await page.getByRole("button", { name: "Undo" }).click();
  await finishedAnew(page, second);
  expect(await page.locator(".candidates").textContent()).toBe(first);
});

async function finishedAnew(page: Parameters<typeof finished>[0], before: string | null): Promise<void> {
  await expect.poll(() => page.locator(".candidates").textContent(), { timeout: 20_000 }).not.toBe(before);
  await finished(page);
}

test("bad input is answered beside its field with what is allowed, and what was typed stays", async ({ page }) => {
  await openFinishedPlan(page);
  const first = await page.locator(".candidates").textContent();
  const speed = page.getByRole("textbox", { name: "Launch speed" });
  for (const [typed, quoted] of [
    ["0", "0"],
    ["fast", "fast"],
    ["-3", "-3"],
  ] as const) {
    await speed.fill(typed);
    await expect(speed).toHaveAccessibleDescription(`“${quoted}” does not fit. Allowed: 0 < x ≤ 40 mph.`);
    await expect(speed).toHaveValue(typed);
    await expect(speed).toHaveAttribute("aria-invalid", "true");
  }
  await expect(page.locator("#answer")).toHaveAttribute("data-status", "refused");
  expect(await page.locator(".candidates").textContent()).toBe(first);
  await expect(page.locator(".verdict")).toContainText("of 100 worlds that fit what is known");
  await speed.fill("17,5");
  await finished(page);
  await expect(page.getByText("does not fit")).toHaveCount(0);
});

test("a finish that the cover never takes is refused with the reason", async ({ page }) => {
  await openPlan(page);
  await page.getByLabel("Finish today").fill("polish");
  await expect(page.getByLabel("Finish today")).toHaveAccessibleDescription(/“polish” does not fit\. Allowed: .*1000 \+ polish/);
});

test("words in place of numbers: fast and slow bowlers get different answers", async ({ page }) => {
  await openPlan(page);
  await page.getByText("words", { exact: true }).click();
  await finished(page);
  const medium = await page.locator(".candidates").textContent();
  await page.getByLabel("How fast").selectOption("fast");
  await finishedAnew(page, medium);
  expect(await page.locator(".candidates").textContent()).not.toBe(medium);
});

test("the draft survives a reload", async ({ page }) => {
  await openPlan(page);
  await page.getByRole("textbox", { name: "Rev rate" }).fill("275");
  await page.reload();
  await expect(page.getByRole("textbox", { name: "Rev rate" })).toHaveValue("275");
});

test("stopping keeps what was found, and computing again finishes it", async ({ page }) => {
  await page.goto("/plan");
  await expect(page.locator(".pick-sentence")).toBeVisible();
  await page.getByRole("button", { name: "Stop" }).click();
  await expect(page.locator("#answer")).toHaveAttribute("data-status", "stopped");
  await expect(page.locator(".pick-sentence")).toBeVisible();
  await page.getByRole("button", { name: "Compute again" }).click();
  await finished(page);
});

test("the customer's view speaks in feet and words, without a percentage or a chance", async ({ page }) => {
  await openPlan(page);
  await page.getByText("customer", { exact: true }).click();
  const told = page.locator(".customer");
  await expect(told).toContainText(/It starts to hook/);
  expect((await told.textContent()) ?? "").not.toMatch(/%|chance|percent/i);
});

test("a finish ticked in the table appears on the chart; a fourth to compare has to wait", async ({ page }) => {
  await openFinishedPlan(page);
  const before = await page.locator(".lane-chart .gw-course").count();
  await page.locator(".candidates tr", { hasText: "4000" }).first().locator(".tick").first().click();
  await expect(page.locator(".lane-chart .gw-course")).toHaveCount(before + 1);
  await page.locator(".compare-plate").scrollIntoViewIfNeeded();
  await expect(page.locator(".compare-chart .gw-strip")).toHaveCount(3);
  const free = page.locator(".candidates [aria-label^='Compare']:not(:checked)").first();
  await expect(free).toBeDisabled();
});

test("files: the chart stands by itself, the table has a row a finish, the job opens again as it was saved", async ({ page }) => {
  await openPlan(page);
  const saved = async (button: string): Promise<string> => {
    const [file] = await Promise.all([page.waitForEvent("download"), page.getByRole("button", { name: button }).first().click()]);
    return file.path();
  };
  const svg = await readFile(await saved("As SVG"), "utf8");
  expect(svg).toMatch(/^<svg xmlns="http:\/\/www.w3.org\/2000\/svg"/);
  expect(svg).not.toContain("var(");
  const png = await readFile(await saved("As PNG"));
  expect([...png.subarray(0, 4)]).toEqual([0x89, 0x50, 0x4e, 0x47]);
  const rows = (await readFile(await saved("Table as CSV"), "utf8")).trimEnd().split("\r\n");
  expect(rows).toHaveLength(1 + (await page.locator(".candidates tbody tr").count()));
  expect(rows[0]).toMatch(/^finish,effectiveRaUm,chance,chanceLow,chanceHigh,laydownBoard,launchAngleDeg,/);
  await page.getByRole("textbox", { name: "Rev rate" }).fill("410");
  const job = await saved("Save the job file");
  await page.getByRole("button", { name: "Back to the example" }).click();
  await expect(page.getByRole("textbox", { name: "Rev rate" })).toHaveValue("320");
  await page.locator("input[type=file]").setInputFiles(job);
  await expect(page.getByRole("textbox", { name: "Rev rate" })).toHaveValue("410");
  await page.locator("input[type=file]").setInputFiles({ name: "x.yaml", mimeType: "text/yaml", buffer: Buffer.from("bowler: { name") });
  await expect(page.getByRole("alert")).toContainText("cannot be read as a job file");
  await expect(page.getByRole("textbox", { name: "Rev rate" })).toHaveValue("410");
  await page.locator("input[type=file]").setInputFiles("examples/heavy-night.yaml");
  await expect(page.getByRole("alert")).toHaveCount(0);
  await expect(page.getByLabel("Pattern")).toHaveValue("heavy-44");
});

test("by keyboard alone: skip to the answer, change a number, switch the view", async ({ page }) => {
  await openPlan(page);
  await page.keyboard.press("Tab");
  await expect(page.getByRole("link", { name: "Skip to the answer" })).toBeFocused();
  await page.keyboard.press("Enter");
  await expect(page.locator("#answer")).toBeFocused();
  await page.keyboard.press("Tab");
  await expect(page.getByRole("radio", { name: "technician" })).toBeFocused();
  await page.keyboard.press("ArrowRight");
  await expect(page.locator(".customer")).toBeVisible();
  await page.getByRole("textbox", { name: "Launch speed" }).focus();
  await page.keyboard.press("ControlOrMeta+a");
  await page.keyboard.type("16");
  await expect(page.getByRole("textbox", { name: "Launch speed" })).toHaveValue("16");
});

test("speed is dragged by the arrow keys and by a finger, and the answer follows; the oil too, as a share of the pattern", async ({
  page,
}) => {
  await openPlan(page);
  const before = await page.locator(".candidates").textContent();
  const speed = page.getByRole("slider", { name: "Launch speed: drag" });
  await speed.focus();
  for (let press = 0; press < 15; press++) await page.keyboard.press("ArrowRight");
  await expect(page.getByRole("textbox", { name: "Launch speed" })).toHaveValue("19");
  await finishedAnew(page, before);
  const box = await speed.boundingBox();
  if (box === null) throw new Error("The knob is not in view.");
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
  await page.mouse.down();
  await page.mouse.move(box.x + box.width / 4, box.y + box.height / 2, { steps: 8 });
  await page.mouse.up();
  // A quarter of the way from 11 to 23 mph; the knob's own width moves it a little.
  await expect.poll(async () => Number(await page.getByRole("textbox", { name: "Launch speed" }).inputValue())).toBeLessThan(14.7);
  const oil = page.getByRole("slider", { name: "Oil on the lane: drag" });
  await oil.focus();
  await page.keyboard.press("ArrowLeft");
  await expect(page.getByText("95 % of the pattern")).toBeVisible();
  await finished(page);
});

test("what a figure means is one tap away: in words, as an equation, on which assumptions, from where", async ({ page }) => {
  await openPlan(page);
  await page.getByRole("region", { name: "What the figures mean" }).getByRole("button", { name: "Hook start" }).click();
  const meaning = page.getByRole("dialog", { name: "Hook start: what it means" });
  await expect(meaning).toContainText("µ = s µ_dry + (1 − s) µ_oil");
  await expect(meaning).toContainText("friction on full oil");
  await expect(meaning).toContainText("docs/model/friction.md");
  const { violations } = await new AxeBuilder({ page }).include("dialog").analyze();
  expect(violations.map((v) => v.id)).toEqual([]);
  await page.keyboard.press("Escape");
  await expect(meaning).toBeHidden();
});
