import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { AxeBuilder } from "@axe-core/playwright";
import { type APIRequestContext, type BrowserContext, expect, type Page, test } from "@playwright/test";
import type { ChildServer } from "../../tools/childServer.ts";
import { ownServer } from "./shopServer.ts";

/* A shop of its own, from no password at all to roles, PINs and the outbox of a session that has ended. */

const OWNER = "seven herons on a jetty";
const TECHNICIAN = "grey grit under the lamp";
const COUNTER = "two tickets and a ladder";

let data: string;
let server: ChildServer;
let context: BrowserContext;
test.beforeEach(async ({ browser }) => {
  data = mkdtempSync(join(tmpdir(), "gritwright-access-"));
  server = await ownServer(data, 0, ["--own"]);
  context = await browser.newContext({ baseURL: server.address });
});
test.afterEach(async () => {
  await context.close();
  await server.kill();
  rmSync(data, { recursive: true, force: true });
});

interface Made {
  readonly id: string;
}

async function made(request: APIRequestContext, path: string, body: object): Promise<Made> {
  const response = await request.post(`/api/${path}`, { data: body });
  expect(response.ok(), `${path}: ${await response.text()}`).toBe(true);
  return (await response.json()) as Made;
}

/** A ticket to move, and a person for each role but the owner's, all before anybody has a password. */
async function furnish(): Promise<{ readonly ticket: Made; readonly technician: Made; readonly counter: Made }> {
  const { request } = context;
  const at = "2026-05-31T18:00:00.000Z";
  const bowler = await made(request, "bowlers", { name: "Ottilie Sandgrouse" });
  const ball = await made(request, "balls", { name: "Grey Heron", cover: "solid", bowlerId: bowler.id });
  const visit = await made(request, "visits", { bowlerId: bowler.id, arrivedAt: at, currency: "USD" });
  const ticket = await made(request, "tickets", { visitId: visit.id, ballId: ball.id, receivedAt: at });
  const technician = await made(request, "people", { name: "Perpetua Lintwhistle", initials: "PL" });
  const counter = await made(request, "people", { name: "Barnaby Crake", initials: "BC" });
  return { ticket, technician, counter };
}

async function signIn(page: Page, name: string, password: string): Promise<void> {
  await page.getByLabel("Name to sign in with").fill(name);
  await page.getByLabel("Password", { exact: true }).fill(password);
  await page.getByRole("button", { name: "Sign in" }).click();
  await expect(page.getByRole("heading", { name: "Sign in" })).toHaveCount(0);
}

async function mustBeSound(page: Page): Promise<void> {
  const { violations } = await new AxeBuilder({ page }).analyze();
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0].html}`)).toEqual([]);
  const wide = await page.evaluate(() => {
    const { scrollWidth, clientWidth } = document.documentElement;
    return { scrollWidth, clientWidth };
  });
  expect(wide.scrollWidth).toBeLessThanOrEqual(wide.clientWidth);
  const low = await page
    .locator("button:visible, input:visible, select:visible")
    .evaluateAll((all) =>
      all.filter((one) => one.getBoundingClientRect().height < 44 && !one.closest(".one-of")).map((one) => one.outerHTML),
    );
  expect(low).toEqual([]);
}

test("the first password makes an owner, who gives the others theirs; a PIN changes the person, and each sees what the role may use", async () => {
  test.setTimeout(90_000);
  const { ticket } = await furnish();
  const page = await context.newPage();
  await page.setViewportSize({ width: 360, height: 740 });
  await page.goto("/shop");
  await page.getByRole("button", { name: "Who may come in" }).click();
  await expect(page.getByText("Nobody has a password yet")).toBeVisible();
  await page.getByRole("button", { name: "Give a password: Technician" }).click();
  const first = page.getByRole("region", { name: "Give a password: Technician" });
  await first.getByLabel("Name to sign in with").fill("Ansel");
  await first.getByLabel("Password for the person").fill("short");
  await first.getByRole("button", { name: "Keep" }).click();
  await expect(first.getByText(/10 to 128 letters/)).toBeVisible();
  await first.getByLabel("Password for the person").fill(OWNER);
  await first.getByRole("button", { name: "Keep" }).click();

  await expect(page.getByRole("heading", { name: "Sign in" })).toBeVisible();
  await mustBeSound(page);
  await page.getByLabel("Name to sign in with").fill("Ansel");
  await page.getByLabel("Password", { exact: true }).fill("not the one at all");
  await page.getByRole("button", { name: "Sign in" }).click();
  await expect(page.getByText("Name or password is wrong.")).toBeVisible();
  await signIn(page, "Ansel", OWNER);
  await page.getByRole("button", { name: "Who may come in" }).click();
  await giveSignIn(page, "Barnaby Crake", "barnaby", COUNTER, "counter");
  await giveSignIn(page, "Perpetua Lintwhistle", "perpetua", TECHNICIAN, "technician");
  await mustBeSound(page);
  const name = page.getByRole("button", { name: "T · Technician" });
  await name.click();
  await expect(page.getByText("Nobody else has a PIN.")).toBeVisible();
  await page.getByRole("button", { name: "Sign out" }).click();

  await signIn(page, "perpetua", TECHNICIAN);
  await page.getByRole("button", { name: "PL · Perpetua Lintwhistle" }).click();
  await page.getByRole("button", { name: "Your password and PIN" }).click();
  const dialog = page.getByRole("dialog");
  await dialog.getByLabel("Your password so far").nth(1).fill(TECHNICIAN);
  await dialog.getByLabel("New PIN").fill("7302");
  await dialog.getByRole("button", { name: "Set the PIN" }).click();
  await expect(dialog.getByText("Kept.")).toBeVisible();
  await mustBeSound(page);
  await dialog.getByRole("button", { name: "Sign out" }).click();

  await signIn(page, "barnaby", COUNTER);
  const nav = page.getByRole("navigation", { name: "Rooms" });
  await expect(nav.getByRole("link", { name: "Money" })).toBeVisible();
  await expect(nav.getByRole("link", { name: "Lane side" })).toHaveCount(0);
  await page.goto("/measure");
  await expect(page.getByText("This room is for: technician.")).toBeVisible();
  await page.goto("/shop");
  await expect(page.getByRole("button", { name: "Prices" })).toBeVisible();
  await expect(page.getByRole("button", { name: /Backups|Who may come in|Who did what/ })).toHaveCount(0);
  await page.goto(`/tickets/${ticket.id}`);
  await page.getByRole("button", { name: "BC · Barnaby Crake" }).click();
  await dialog.getByLabel("PIN", { exact: true }).fill("0937");
  await dialog.getByRole("button", { name: "Take over" }).click();
  await expect(dialog.getByText("That is not right.")).toBeVisible();
  await dialog.getByLabel("PIN", { exact: true }).fill("7302");
  await dialog.getByRole("button", { name: "Take over" }).click();
  await expect(page.getByRole("button", { name: "PL · Perpetua Lintwhistle" })).toBeVisible();
  await expect(nav.getByRole("link", { name: "Lane side" })).toHaveCount(1);
  await expect(page.getByRole("heading", { name: "Grey Heron" })).toBeVisible();
});

async function giveSignIn(page: Page, person: string, name: string, password: string, role: string): Promise<void> {
  await page.getByRole("button", { name: `Give a password: ${person}` }).click();
  const form = page.getByRole("region", { name: `Give a password: ${person}` });
  await form.getByLabel("Name to sign in with").fill(name);
  await form.getByLabel("Role").selectOption(role);
  await form.getByLabel("Password for the person").fill(password);
  await form.getByLabel("Your own password").fill(OWNER);
  await form.getByRole("button", { name: "Keep" }).click();
  await expect(form).toHaveCount(0);
}

test("what was decided when the session had ended waits for the same person, and signing out throws away what was read", async () => {
  test.setTimeout(90_000);
  const { ticket, counter } = await furnish();
  const people = (await (await context.request.get("/api/people?order=oldest+first")).json()).items as Made[];
  await made(context.request, `people/${people[0].id}/sign-in`, { signInName: "ansel", role: "owner", password: OWNER });
  await made(context.request, "session", { signInName: "ansel", password: OWNER });
  const counters = { signInName: "barnaby", role: "counter", password: COUNTER, ownPassword: OWNER };
  await made(context.request, `people/${counter.id}/sign-in`, counters);
  await context.request.delete("/api/session");

  const page = await context.newPage();
  await page.goto(`/tickets/${ticket.id}`);
  await signIn(page, "barnaby", COUNTER);
  const moves = page.locator("section", { has: page.getByRole("heading", { name: "Next", exact: true }) }).getByRole("button");
  await expect(moves.first()).toBeVisible();
  const sessions = (await (await context.request.get("/api/sessions")).json()).items as Made[];
  await context.request.delete(`/api/sessions/${sessions[0].id}`);
  await moves.first().click();
  await expect(page.getByRole("heading", { name: "Sign in" })).toBeVisible();
  await expect(page.getByText("1 thing that was written here waits in this browser.")).toBeVisible();
  expect((await (await context.request.get(`/api/tickets/${ticket.id}`)).json()).status).toBe(401);

  await signIn(page, "ansel", OWNER);
  await expect(page.getByText("1 thing that somebody else wrote here is sent when that person signs in here.")).toBeVisible();
  expect((await (await context.request.get(`/api/tickets/${ticket.id}`)).json()).state).toBe("received");
  await page.getByRole("button", { name: "T · Technician" }).click();
  const dialog = page.getByRole("dialog");
  await dialog.getByRole("button", { name: "Sign out" }).click();
  await expect(dialog.getByText("1 thing still waits to be sent.")).toBeVisible();
  await dialog.getByRole("button", { name: "Sign out all the same" }).click();
  await expect(page.getByRole("heading", { name: "Sign in" })).toBeVisible();
  expect(await page.evaluate(() => caches.has("gritwright-read"))).toBe(false);

  await signIn(page, "barnaby", COUNTER);
  await expect(page.getByText(/waits? to be sent|written here/)).toHaveCount(0);
  await expect.poll(async () => (await (await context.request.get(`/api/tickets/${ticket.id}`)).json()).state).not.toBe("received");
});

test("a form that was being filled in when the session ended is there again for the same person", async () => {
  await furnish();
  const people = (await (await context.request.get("/api/people?order=oldest+first")).json()).items as Made[];
  await made(context.request, `people/${people[0].id}/sign-in`, { signInName: "ansel", role: "owner", password: OWNER });
  const page = await context.newPage();
  await page.goto("/lanes");
  await signIn(page, "ansel", OWNER);
  await page.getByLabel("Name of the house").fill("Nowhere Lanes");
  const sessions = (await (await context.request.get("/api/sessions")).json()).items as Made[];
  await context.request.delete(`/api/sessions/${sessions[0].id}`);
  const add = page.getByRole("button", { name: "Add the house" });
  await add.click();
  await signIn(page, "ansel", OWNER);
  await expect(page.getByLabel("Name of the house")).toHaveValue("Nowhere Lanes");
  await add.click();
  await expect(page.getByRole("heading", { name: "Nowhere Lanes" })).toBeVisible();
});

test("no room that a role is offered asks the shop for anything that the role may not have", async () => {
  test.setTimeout(120_000);
  const { ticket, technician, counter } = await furnish();
  const { request } = context;
  const reader = await made(request, "people", { name: "Sybil Whinchat", initials: "SW" });
  const [first] = (await (await request.get("/api/people?order=oldest+first")).json()).items as Made[];
  const { ballId, bowlerId } = await (await request.get(`/api/tickets/${ticket.id}`)).json();
  await made(request, `people/${first.id}/sign-in`, { signInName: "owner", role: "owner", password: OWNER });
  await made(request, "session", { signInName: "owner", password: OWNER });
  const roles = { reader: reader.id, counter: counter.id, technician: technician.id };
  for (const [role, id] of Object.entries(roles))
    await made(request, `people/${id}/sign-in`, { signInName: role, role, password: COUNTER, ownPassword: OWNER });
  const page = await context.newPage();
  const refused: string[] = [];
  page.on("response", (response) => {
    if (response.status() === 401 || response.status() === 403)
      refused.push(`${page.url()} ${response.request().method()} ${response.url()}`);
  });
  for (const role of Object.keys(roles)) {
    await made(request, "session", { signInName: role, password: COUNTER });
    await page.goto("/");
    await expect(page.getByRole("navigation", { name: "Rooms" }).getByRole("link", { name: "Today" })).toBeVisible();
    const links = page.getByRole("navigation", { name: "Rooms" }).getByRole("link");
    // Until the server has said who is here, the bar is that of whoever was here last.
    await expect(links.filter({ hasText: /^Money$/ })).toHaveCount(role === "reader" ? 0 : 1);
    const offered = await links.evaluateAll((all) => all.map((one) => one.getAttribute("href") ?? ""));
    for (const path of [
      ...offered,
      `/tickets/${ticket.id}`,
      `/balls/${ballId}`,
      `/bowlers/${bowlerId}`,
      `/bags/${bowlerId}`,
      `/print/ticket/${ticket.id}`,
      "/held",
    ]) {
      await page.goto(path);
      await expect(page.locator("h1").first()).toBeVisible();
      await expect(page.locator("p.reading")).toHaveCount(0);
    }
  }
  expect(refused).toEqual([]);
});

test("what takes everything out, or ends what is kept, asks for the password in that place", async () => {
  test.setTimeout(90_000);
  const { counter } = await furnish();
  const { request } = context;
  const { items } = await (await request.get("/api/people?order=oldest%20first")).json();
  const { items: bowlers } = await (await request.get("/api/bowlers")).json();
  await made(request, `people/${items[0].id}/sign-in`, { signInName: "ansel", role: "owner", password: OWNER });
  const page = await context.newPage();
  await page.setViewportSize({ width: 360, height: 740 });
  await page.goto("/shop");
  await signIn(page, "ansel", OWNER);
  await made(request, `people/${counter.id}/sign-in`, { signInName: "barnaby", role: "counter", password: COUNTER, ownPassword: OWNER });
  await page.goto("/shop");
  const password = page.getByLabel("Your own password");
  await page.getByRole("button", { name: "Backups" }).click();
  await page.getByRole("button", { name: "Make a backup now" }).click();
  const take = page.getByRole("button", { name: /^Save gritwright|^Save .*zip/ }).first();
  await expect(take).toBeDisabled();
  await password.fill("not the one at all");
  await take.click();
  await expect(page.getByText("That is not right. Nothing was changed.")).toBeVisible();
  await password.fill(OWNER);
  await mustBeSound(page);
  const [backup] = await Promise.all([page.waitForEvent("download"), take.click()]);
  expect(backup.suggestedFilename()).toMatch(/\.zip$/);

  await page.getByRole("button", { name: "Take everything out" }).click();
  await password.last().fill(OWNER);
  await mustBeSound(page);
  const [all] = await Promise.all([page.waitForEvent("download"), page.getByRole("button", { name: "Save everything" }).click()]);
  expect(all.suggestedFilename()).toBe("everything.zip");

  await page.getByRole("button", { name: "Who may come in" }).click();
  await page.getByRole("button", { name: "Change: Barnaby Crake" }).click();
  await password.first().fill(OWNER);
  await page.getByRole("button", { name: "Take the sign-in away" }).click();
  await expect(page.getByRole("button", { name: "Give a password: Barnaby Crake" })).toBeVisible();

  await page.goto(`/bowlers/${bowlers[0].id}`);
  await page.getByRole("button", { name: "Erase" }).click();
  const dialog = page.getByRole("alertdialog");
  const erase = dialog.getByRole("button").last();
  await expect(erase).toBeDisabled();
  await password.fill(OWNER);
  await mustBeSound(page);
  await erase.click();
  await expect(page.getByText("were erased on")).toBeVisible();
  await page.goto("/shop");
  await page.getByRole("button", { name: "Who did what" }).click();
  for (const did of ["took a backup out", "took data out", "erased", "was not let in"])
    await expect(page.getByRole("cell", { name: did }).first()).toBeVisible();
});
