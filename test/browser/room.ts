import { type APIRequestContext, expect, type Page } from "@playwright/test";

/** Opens the finish plan and waits for its first answer: other worlds are still being computed. */
export async function openPlan(page: Page): Promise<void> {
  await page.goto("/plan");
  await expect(page.locator(".pick-sentence")).toBeVisible();
}

/** Opens the finish plan and waits until it is worked out to the end. */
export async function openFinishedPlan(page: Page): Promise<void> {
  await page.goto("/plan");
  await finished(page);
}

export async function finished(page: Page): Promise<void> {
  await expect(page.locator("#answer")).toHaveAttribute("data-status", "done", { timeout: 40_000 });
}

/** Chances in the table, per cent, from dull to smooth. */
export async function chances(page: Page): Promise<number[]> {
  const cells = page.locator(".candidates td[data-name='Strike chance']");
  // As written, not as seen: a table below the fold is not laid out yet.
  return (await cells.allTextContents()).map((text) => Number.parseInt(text, 10));
}

/** Opens what is behind "Change the finish" on a ticket, where it is not open. */
export async function openWish(page: Page): Promise<void> {
  const change = page.getByRole("button", { name: "Change the finish" });
  await change.waitFor();
  if ((await change.getAttribute("aria-expanded")) !== "true") await change.click();
  await expect(page.getByLabel("Finish wanted")).toBeVisible();
}

/** Collects what the page complains of; a test ends by finding nothing. */
export function complaints(page: Page): string[] {
  const heard: string[] = [];
  page.on("pageerror", (error) => heard.push(error.message));
  page.on("console", (message) => {
    if (message.type() === "error" || message.type() === "warning") heard.push(message.text());
  });
  return heard;
}

interface Worked {
  readonly id: string;
  readonly ballId: string;
  readonly state: string;
  readonly receivedAt: string;
  readonly stages: readonly { readonly sideIds: readonly string[] }[];
}

interface Signed {
  readonly sideSeconds: readonly number[];
}

/**
 * A ball of the invented shop whose last work with pads was signed with the seconds of every side, and fetched, and whose track was read. Other tests write
 * into the same shop: that a ball was fetched does not tell that anybody signed for its work.
 */
export async function workedBall(request: APIRequestContext): Promise<string> {
  const { items }: { items: readonly Worked[] } = await (await request.get("/api/tickets?limit=200&order=newest first")).json();
  const withPads = items.filter(({ stages }) => stages.some(({ sideIds }) => sideIds.length === 6));
  const newest = withPads.filter(({ ballId, receivedAt }) =>
    withPads.every((one) => one.ballId !== ballId || one.receivedAt <= receivedAt),
  );
  for (const { id, ballId, state } of newest) {
    if (state !== "collected") continue;
    const { items: done }: { items: readonly Signed[] } = await (await request.get(`/api/stages-done?ticketId=${id}`)).json();
    if (!done.some(({ sideSeconds }) => sideSeconds.length === 6 && sideSeconds.every((seconds) => seconds > 0))) continue;
    const { items: readings } = await (await request.get(`/api/readings?ballId=${ballId}&limit=200`)).json();
    if (readings.some(({ place }: { place: string }) => place === "track")) return ballId;
  }
  throw new Error("No ball of the invented shop was worked, fetched and read.");
}
