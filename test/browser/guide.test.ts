import { type APIRequestContext, expect, test } from "@playwright/test";

/* Oil drawn out by the shop's own setting, a signature undone, a state put back, over a shop that other tests change too. */

interface Made {
  readonly id: string;
  readonly ballId: string;
}

async function ticketFor(request: APIRequestContext, name: string, ball: object, stages: readonly object[]): Promise<Made> {
  const post = async (path: string, data: object) => (await (await request.post(path, { data })).json()) as { id: string };
  const at = new Date().toISOString();
  const { id: ballId } = await post("/api/balls", { name, cover: "solid", boxFinish: "2000", ...ball });
  const { id: visitId } = await post("/api/visits", { arrivedAt: at, currency: "USD" });
  const { id } = await post("/api/tickets", { visitId, ballId, receivedAt: at, stages });
  return { id, ballId };
}

async function set(request: APIRequestContext, temperatureF: number | null): Promise<void> {
  const { version } = await (await request.get("/api/settings")).json();
  const extraction = temperatureF === null ? null : { method: "warm bath", temperatureF, minutes: 20, wipeMinutes: 5, restMinutes: 60 };
  const sent = await request.patch("/api/settings", { data: { extraction }, headers: { "If-Match": `"${version}"` } });
  expect(sent.ok()).toBe(true);
}

const OIL = [{ kind: "extract" }, { kind: "dryOff" }, { kind: "check" }];

test("without a setting oil has no clock; with one it has, and warns above 130 °F (makers' warnings, second-hand)", async ({
  page,
  request,
}) => {
  const { id } = await ticketFor(request, "Slate Avocet", {}, OIL);
  await set(request, null);
  await page.goto(`/bench/${id}`);
  await expect(page.getByText("Set your temperature and time first.")).toBeVisible();
  await expect(page.getByRole("timer")).toHaveCount(0);
  await set(request, 120);
  await page.reload();
  await expect(page.getByRole("timer")).toHaveText("20:00");
  await expect(page.getByText("120 °F for 20 min")).toBeVisible();
  await expect(page.getByText("wipe off beads every 5")).toBeVisible();
  await expect(page.getByRole("alert")).toHaveCount(0);
  await set(request, 135);
  await page.reload();
  await expect(page.getByRole("alert")).toContainText("135 °F is above 130");
  await expect(page.getByRole("timer")).toBeVisible();
});

test("heat comes back at what it had run when the page went off, and signed before its time it says so", async ({ page, request }) => {
  const { id } = await ticketFor(request, "Slate Wigeon", {}, OIL);
  await set(request, 120);
  await page.goto(`/bench/${id}`);
  await expect(page.getByText("120 °F for 20 min, then 60 min rest")).toBeVisible();
  await page.getByRole("button", { name: "Heat’s on" }).click();
  await expect(page.getByRole("timer")).toHaveText(/^19:5[0-6]$/);
  await page.getByRole("button", { name: "5 min more" }).click();
  await expect(page.getByRole("timer")).toHaveText(/^24:[45]\d$/);
  await page.reload();
  await expect(page.getByText(/^The page went off after [1-9]\d? of 1500 seconds\.$/)).toBeVisible();
  await expect(page.getByText("Did it go on after that?")).toBeVisible();
  await page.getByRole("button", { name: /^No, it stood/ }).click();
  await expect(page.getByRole("timer")).toHaveText(/^24:[45]\d$/);
  await page.getByRole("button", { name: /^Sign without the clock/ }).click();
  await expect(page.getByRole("heading", { name: "Let it dry and cool" })).toBeVisible();
  await expect(page.getByRole("button", { name: "It’s resting" })).toBeVisible();
  const { items } = await (await request.get(`/api/stages-done?ticketId=${id}`)).json();
  expect(items[0]).toMatchObject({ kind: "extract", note: "Signed without the clock." });
  expect(items[0].secondsRun).toBeGreaterThan(0);
});

test("above 140 °F nothing can be set; above the limit of a ball's maker the guide refuses, and nothing can be signed", async ({
  page,
  request,
}) => {
  const { version } = await (await request.get("/api/settings")).json();
  const data = { extraction: { method: "oven", temperatureF: 150, minutes: 20, restMinutes: 0 } };
  expect((await request.patch("/api/settings", { data, headers: { "If-Match": `"${version}"` } })).status()).toBe(422);
  const { id } = await ticketFor(request, "Slate Knot", { heatLimitF: 115 }, OIL);
  await set(request, 120);
  await page.goto(`/bench/${id}`);
  await expect(page.getByRole("alert")).toContainText("No heat: your setting is 120 °F, and this ball’s maker allows 115 °F.");
  await expect(page.getByRole("timer")).toHaveCount(0);
  await expect(page.getByRole("button", { name: /^Sign/ })).toHaveCount(0);
});

test("a signature can be undone until the next step is begun; a stop leaves one way out", async ({ page, request }) => {
  const { id } = await ticketFor(request, "Slate Ruff", {}, [{ kind: "clean" }, { kind: "check" }]);
  await page.goto(`/bench/${id}`);
  await page.getByRole("button", { name: /^Sign/ }).click();
  await expect(page.getByRole("heading", { name: "Check all sides" })).toBeVisible();
  await page.getByRole("button", { name: "Undo signature" }).click();
  await expect(page.getByRole("heading", { name: "Clean" })).toBeVisible();
  const { version } = await (await request.get(`/api/tickets/${id}`)).json();
  const stops = [{ at: new Date().toISOString(), why: "crack", clearedAt: null }];
  await request.patch(`/api/tickets/${id}`, { data: { stops }, headers: { "If-Match": `"${version}"` } });
  await page.reload();
  await expect(page.getByRole("alert")).toHaveText("Stopped: crack. No spinner, no heat.");
  await page.getByRole("link", { name: "To the ticket" }).click();
  await expect(page).toHaveURL(new RegExp(`/tickets/${id}$`));
});

test("a state is put back with a reason, which stays in the history; without one the shop refuses", async ({ page, request }) => {
  const { id } = await ticketFor(request, "Slate Dotterel", {}, [{ kind: "clean" }]);
  const move = async (data: object) => {
    const { version } = await (await request.get(`/api/tickets/${id}`)).json();
    return request.post(`/api/tickets/${id}/move`, { data, headers: { "If-Match": `"${version}"` } });
  };
  expect((await move({ to: "in work" })).ok()).toBe(true);
  // Work is planned that nobody has signed.
  expect((await move({ to: "ready" })).ok()).toBe(false);
  for (const to of ["ready", "collected"]) expect((await move({ to, why: "Cleaned at the lane" })).ok(), to).toBe(true);
  expect((await move({ to: "ready" })).ok()).toBe(false);
  await page.goto(`/tickets/${id}`);
  await page.getByRole("button", { name: "History" }).click();
  await page.getByRole("button", { name: /^Put back to/ }).click();
  await page.getByLabel("Why it is put back").fill("Wrong ball handed out");
  await page.getByRole("button", { name: "Put it back" }).click();
  await expect(page.locator(".history li").last()).toContainText("Wrong ball handed out");
  const ticket = await (await request.get(`/api/tickets/${id}`)).json();
  expect([ticket.state, ticket.collectedAt]).toEqual(["ready", null]);
});
