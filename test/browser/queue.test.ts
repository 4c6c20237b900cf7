import { expect, test } from "@playwright/test";

test("where the server takes no more pages that listen, the page asks for the queue instead", async ({ page, request }) => {
  await page.route("**/api/queue/events", (route) => route.fulfill({ status: 503, body: "" }));
  await page.goto("/");
  const { items } = await (await request.get("/api/queue")).json();
  await expect(page.getByText(items[0].ballName).first()).toBeVisible();
  const path = `/api/balls/${items[0].ticket.ballId}`;
  const { version } = await (await request.get(path)).json();
  const changed = await request.patch(path, { data: { name: "Renamed elsewhere" }, headers: { "If-Match": `"${version}"` } });
  expect(changed.status()).toBe(200);
  await expect(page.getByText("Renamed elsewhere").first()).toBeVisible();
});
