import { expect, test } from "@playwright/test";

/* A promise is made for when the shop is open, and changed with a reason, at the counter and on the ticket. */

test("opening hours are typed in Shop; another time is promised with a reason, and the ticket tells both", async ({ page, request }) => {
  await page.goto("/shop");
  await expect(page.getByText("the usual, until you set yours")).toBeVisible();
  await page.getByRole("button", { name: "Change: Opening hours" }).click();
  await page.getByLabel("Monday").fill("late");
  await page.getByRole("button", { name: "Keep", exact: true }).click();
  await expect(page.locator(".field-problem")).toContainText("10:00 to 19:00");
  for (const day of ["Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday"])
    await page.getByLabel(day).fill("12-12:30");
  await page.getByRole("button", { name: "Keep", exact: true }).click();
  await expect(page.getByText("12:00–12:30").first()).toBeVisible();
  expect((await (await request.get("/api/settings")).json()).openings.sunday).toEqual({ from: "12:00", until: "12:30" });

  const bowler = await (await request.post("/api/bowlers", { data: { name: "Invented Hasty" } })).json();
  await request.post("/api/balls", { data: { name: "Invented Sprint", cover: "solid", bowlerId: bowler.id } });
  await page.goto(`/intake?bowler=${bowler.id}`);
  await page.getByRole("button", { name: /Invented Sprint/ }).click();
  // Half an hour a day: whatever waits, it is fetched at noon or half past.
  await expect(page.locator(".take-in")).toContainText(/12:(00|30)/);
  await expect(page.locator(".take-in")).toContainText("Bench is free from");
  await page.getByRole("button", { name: /^Ready by .*Promise another time$/ }).click();
  // Sooner than the bench is through with what waits: it is said, and may be promised all the same.
  await page.getByLabel("Promised for, by the shop's clock").fill("2020-05-31T18:30");
  await expect(page.locator(".take-in")).toContainText(/Bench is full until .*Promise anyway\?/);
  await page.getByLabel("Promised for, by the shop's clock").fill("2030-05-31T18:30");
  await expect(page.locator(".take-in")).not.toContainText("Bench is full");
  await page.getByRole("button", { name: "Check in, plan the finish" }).click();
  await expect(page.getByRole("alert")).toContainText("Say why another time is promised.");
  await page.getByLabel("Why", { exact: true }).fill("League night");
  await page.getByRole("button", { name: "Check in, plan the finish" }).click();
  await expect(page).toHaveURL(/\/plan\?ticket=/);
  const id = new URL(page.url()).searchParams.get("ticket");
  await page.goto(`/tickets/${id}`);
  await expect(page.getByText(/18:30: League night/)).toBeVisible();
  // The demonstration's zone is Chicago, five hours behind in May (IANA time zone database).
  expect((await (await request.get(`/api/tickets/${id}`)).json()).promisedFor).toBe("2030-05-31T23:30:00.000Z");

  await page.getByRole("button", { name: "Promise another time" }).click();
  await page.getByLabel("Promised for, by the shop's clock").fill("2030-06-01T12:00");
  await page.getByRole("button", { name: "Promise it" }).click();
  await expect(page.locator(".field-problem")).toContainText("Say why another time is promised.");
  await page.getByLabel("Why", { exact: true }).fill("Still wet");
  await page.getByRole("button", { name: "Promise it" }).click();
  await expect(page.getByText(/12:00: Still wet/)).toBeVisible();
  await expect(page.getByText(/18:30: League night/)).toBeVisible();
  expect((await (await request.get(`/api/tickets/${id}`)).json()).promisedFor).toBe("2030-06-01T17:00:00.000Z");
});
