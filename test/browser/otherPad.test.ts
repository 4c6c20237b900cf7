import { type APIRequestContext, expect, type Page, test } from "@playwright/test";

/* What is really used at the bench, and the way back in the guide. */

const SIDES = ["grip", "opposite"];

async function onTheBench(page: Page, request: APIRequestContext, name: string, stages: readonly object[]): Promise<string> {
  const post = async (path: string, data: object) => (await (await request.post(path, { data })).json()) as { id: string };
  const at = new Date().toISOString();
  const { id: ballId } = await post("/api/balls", { name, cover: "solid", boxFinish: "3000" });
  const { id: visitId } = await post("/api/visits", { arrivedAt: at, currency: "USD" });
  const { id } = await post("/api/tickets", { visitId, ballId, receivedAt: at, finishAfter: "1000", stages });
  await page.goto(`/bench/${id}`);
  await page.getByRole("button", { name: /It’s this ball/ }).click();
  return id;
}

const cut = (abrasive: string) => ({
  kind: "cut",
  abrasive,
  way: "spinner, dry",
  sides: 2,
  sideIds: SIDES,
  secondsPerSide: 30,
  force: "medium",
  cautions: ["spinner", "dust"],
});

/** Both sides, each a little. */
async function workBothSides(page: Page): Promise<void> {
  for (const at of [1, 2]) {
    await expect(page.locator(".bench-side")).toContainText(`side ${at} of 2`);
    await page.getByRole("button", { name: "Spinner’s on" }).last().click();
    await page.getByRole("button", { name: "Next side" }).click();
  }
}

test("wet paper in the place of a pad warns before it touches the ball, is used wet, and leaves the planned cut to do", async ({
  page,
  request,
}) => {
  const id = await onTheBench(page, request, "Slate Plover", [cut("pad-1000"), { kind: "check" }]);
  await page.getByRole("button", { name: "Got it" }).click();
  await expect(page.locator(".bench-step h1")).toHaveText("Pad 1000, dry");
  await page.getByText("Another pad").click();
  await page.getByLabel("Used").selectOption({ label: "wet paper P800" });
  await expect(page.locator(".bench-step h1")).toHaveText("Wet paper P800, wet");
  await expect(page.locator(".bench-cautions")).toContainText("Wet paper only wet");
  await expect(page.getByRole("button", { name: "Spinner’s on" }).last()).toBeDisabled();
  await page.getByRole("button", { name: "Got it" }).click();
  await workBothSides(page);
  await expect(page.getByLabel("Used")).toHaveValue("paper-P800");
  await page.getByRole("button", { name: /^Sign/ }).click();
  await expect(page.locator(".bench-instead")).toContainText("Wet paper P800 was used here. Pad 1000 is still to do.");
  await expect(page.locator(".bench-step h1")).toHaveText("Pad 1000, dry");
  await expect(page.locator(".bench-side")).toContainText("side 1 of 2");
  await expect
    .poll(async () =>
      (await (await request.get(`/api/stages-done?ticketId=${id}`)).json()).items.find((one: { signs: boolean }) => one.signs),
    )
    .toMatchObject({
      abrasive: "paper-P800",
      way: "spinner, wet",
    });
  await page.getByRole("button", { name: "Plan from here" }).click();
  await expect(page.locator(".bench-instead")).toHaveCount(0);
  const { stages } = await (await request.get(`/api/tickets/${id}`)).json();
  expect(stages.filter(({ kind }: { kind: string }) => kind === "cut").map(({ abrasive }: { abrasive: string }) => abrasive)).toEqual([
    "pad-800",
    "pad-1000",
  ]);
  // What was cut with the paper stands for the 800: only the 1000 is left.
  await expect(page.locator(".bench-step h1")).toContainText("Clean");
});

test("back goes a side and a step back, and unsigns nothing until it is asked to, with a reason", async ({ page, request }) => {
  await onTheBench(page, request, "Slate Oystercatcher", [cut("pad-500"), cut("pad-1000"), { kind: "check" }]);
  await page.getByRole("button", { name: "Got it" }).click();
  await expect(page.getByRole("button", { name: "Back" })).toBeDisabled();
  await workBothSides(page);
  await page.getByRole("button", { name: /^Sign/ }).click();
  await expect(page.locator(".bench-step h1")).toHaveText("Pad 1000, dry");
  await page.getByRole("button", { name: "Spinner’s on" }).last().click();
  await page.getByRole("button", { name: "Next side" }).click();
  await expect(page.locator(".bench-side")).toContainText("side 2 of 2");
  await page.getByRole("button", { name: "Back" }).click();
  await expect(page.locator(".bench-step h1")).toHaveText("Grip up");
  await page.getByRole("button", { name: "Back" }).click();
  await expect(page.locator(".bench-step h1")).toHaveText("Pad 500");
  await page.getByRole("button", { name: "Continue" }).click();
  await expect(page.locator(".bench-side")).toContainText("side 2 of 2");
  await page.getByRole("button", { name: "Back" }).click();
  await page.getByRole("button", { name: "Redo this side" }).click();
  await expect(page.locator(".bench-side")).toContainText("side 1 of 2");
  await page.getByRole("button", { name: "Back" }).click();
  await expect(page.locator(".bench-step h1")).toHaveText("Pad 500");
  await page.getByRole("button", { name: "Take back" }).click();
  await page.getByLabel("Why it is taken back").fill("Wrong pad");
  await page.getByRole("button", { name: "Take back" }).click();
  await expect(page.locator(".bench-step h1")).toHaveText("Pad 500, dry");
});
