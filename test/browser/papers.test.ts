import { type APIRequestContext, expect, test } from "@playwright/test";

/* Papers say what is not known, and cut nothing: the longest invented names on the smallest labels. */

async function ticketOf(request: APIRequestContext, name: string, bowlerName: string): Promise<string> {
  const post = async (path: string, data: object) => (await (await request.post(path, { data })).json()) as { id: string };
  const at = new Date().toISOString();
  const { id: bowlerId } = await post("/api/bowlers", { name: bowlerName });
  const { id: ballId } = await post("/api/balls", { name, serial: "QX-7731 904-A", bowlerId });
  const { id: visitId } = await post("/api/visits", { bowlerId, arrivedAt: at, currency: "USD" });
  const stages = [
    { kind: "clean", cautions: ["cleaner"] },
    { kind: "cut", abrasive: "pad-1000", way: "spinner, wet", sides: 6, secondsPerSide: 30, sideIds: ["grip"] },
    { kind: "check" },
  ];
  const promisedFor = new Date(Date.now() + 86_400_000).toISOString();
  return (await post("/api/tickets", { visitId, ballId, bowlerId, receivedAt: at, promisedFor, finishAfter: "4000 + polish", stages })).id;
}

async function set(request: APIRequestContext, data: object): Promise<void> {
  const { version } = await (await request.get("/api/settings")).json();
  expect((await request.patch("/api/settings", { data, headers: { "If-Match": `"${version}"` } })).ok()).toBe(true);
}

for (const labelSize of ["2.25 × 1.25 in", "62 × 29 mm", "62 × 90 mm"])
  test(`a label of ${labelSize} cuts no name`, async ({ page, request }) => {
    const id = await ticketOf(request, "Slate Oystercatcher Grande", "Perpetua Featherstonehaugh-Underlathe");
    await set(request, { labelSize });
    await page.goto(`/print/label/${id}`);
    await page.emulateMedia({ media: "print" });
    await expect(page.locator(".label h2")).toHaveText("Slate Oystercatcher Grande");
    await expect(page.locator(".label .scan-code svg")).toBeVisible();
    const cut = await page.locator(".label").evaluate((label) => {
      const { bottom, top, left, right } = label.getBoundingClientRect();
      return [...label.querySelectorAll("h2, p, svg")].flatMap((part) => {
        const range = document.createRange();
        range.selectNodeContents(part);
        const box = part.tagName === "svg" ? part.getBoundingClientRect() : range.getBoundingClientRect();
        const isIn = box.top >= top - 1 && box.bottom <= bottom + 1 && box.left >= left - 1 && box.right <= right + 1;
        return isIn && part.scrollWidth <= part.clientWidth + 1 ? [] : [`${part.tagName} ${part.textContent}`];
      });
    });
    expect(cut).toEqual([]);
  });

test("a ticket of somebody unknown says what is not known, its dates have their year, and a phone breaks no word of its table", async ({
  page,
  request,
}) => {
  const id = await ticketOf(request, "Invented Fir", "Perpetua Unknown");
  await page.setViewportSize({ width: 360, height: 800 });
  await page.goto(`/print/ticket/${id}`);
  await expect(page.locator(".sheet")).toContainText("Games since: not known · Speed: not known · Hook: not known");
  await expect(page.locator(".sheet-head")).toContainText(String(new Date(Date.now() + 86_400_000).getFullYear()));
  await expect(page.locator(".stages tbody tr")).toHaveCount(3);
  const table = page.locator(".stages");
  expect(await table.evaluate((one) => getComputedStyle(one.querySelector("td") as Element).overflowWrap)).toBe("normal");
  const [inner, outer] = await table.evaluate((one) => [one.scrollWidth, (one.parentElement as Element).clientWidth]);
  expect(inner).toBeLessThanOrEqual(outer);
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360);
});
