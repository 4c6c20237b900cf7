import { execFile } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { promisify } from "node:util";
import { type APIRequestContext, expect, type Page, test } from "@playwright/test";
import type { ChildServer } from "../../tools/childServer.ts";
import { finished } from "./room.ts";
import { ownServer } from "./shopServer.ts";

/* The page in a pseudo-language (English with an accent on every letter, and a third longer), which shows what stands in no catalogue and what finds no room; and in German. */

const ROOT = join(import.meta.dirname, "..", "..");
const PSEUDO = join(ROOT, "dist", "web-pseudo");

let data: string;
let server: ChildServer;
test.beforeAll(async () => {
  test.setTimeout(120_000);
  const vite = join(ROOT, "node_modules", "vite", "bin", "vite.js");
  await promisify(execFile)(process.execPath, [vite, "build", "--mode", "pseudo", "--logLevel", "error"], { cwd: ROOT });
  data = mkdtempSync(join(tmpdir(), "gritwright-languages-"));
  server = await ownServer(data, 0);
});
test.afterAll(async () => {
  await server.kill();
  rmSync(data, { recursive: true, force: true });
  rmSync(PSEUDO, { recursive: true, force: true });
});

/** Addresses of every room, each with something in it. */
async function rooms(request: APIRequestContext): Promise<readonly string[]> {
  const first = async (path: string) => (await (await request.get(`${server.address}${path}`)).json()).items[0];
  const { ticket } = await first("/api/queue");
  const note = await first("/api/shot-notes");
  const { bowlerId } = await first("/api/shot-notes");
  return [
    "/",
    "/intake",
    `/tickets/${ticket.id}`,
    `/bench/${ticket.id}`,
    `/measure?ball=${ticket.ballId}`,
    `/balls/${ticket.ballId}`,
    `/bowlers/${bowlerId}`,
    `/bags/${bowlerId}`,
    `/wrong?ball=${ticket.ballId}`,
    "/held",
    "/lane-side",
    "/lanes",
    `/lanes/${note.laneId}`,
    `/patterns/${note.patternId}`,
    "/stock",
    "/money",
    "/shop",
    "/plan",
    ...["ticket", "label", "care", "measures"].map((what) => `/print/${what}/${ticket.id}`),
    `/print/visit/${ticket.visitId}`,
  ];
}

/** Every text in the answers of the server: names, numbers of balls, notes. They are nobody's to translate. */
async function dataOf(request: APIRequestContext): Promise<ReadonlySet<string>> {
  // The plan opens with an invented bowler of this name.
  const found = new Set(["A.", "Bowler"]);
  const gather = (value: unknown): void => {
    if (typeof value === "string") for (const part of [value, ...value.split(/[\s,·]+/)]) found.add(part.trim());
    else if (typeof value === "object" && value !== null) Object.values(value).forEach(gather);
  };
  for (const kind of [
    "bowlers",
    "balls",
    "people",
    "houses",
    "patterns",
    "stock-items",
    "prices",
    "tickets",
    "visits",
    "stages-done",
    "audit",
    "reference-balls",
  ])
    for (const order of ["newest first", "oldest first"])
      gather(await (await request.get(`${server.address}/api/${kind}`, { params: { limit: "200", order } })).json());
  gather(await (await request.get(`${server.address}/api/settings`)).json());
  gather(await (await request.get(`${server.address}/api/backups`)).json());
  return found;
}

/** Units, signs and names of quantities and files, which are the same in every language. */
const NOT_WORDS = new Set(
  "ft mph rpm mL µL in lb deg min km/h MB Ra RG PAP VAL µin µm m/s CSV JSON ZIP JPEG PNG WebP SVG QR ISO UTC Gritwright polish grit".split(
    " ",
  ),
);

interface Seen {
  readonly texts: readonly string[];
  readonly cut: readonly string[];
}

/** What the page says, as text, as names for those who hear it, and in its pictures; and what has no room. */
function look(page: Page): Promise<Seen> {
  return page.evaluate(() => {
    const texts: string[] = [document.title];
    const cut: string[] = [];
    const shown = (element: Element): boolean => element.closest("[translate=no], code, script, style, noscript") === null;
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    for (let node = walker.nextNode(); node !== null; node = walker.nextNode())
      if (node.parentElement !== null && shown(node.parentElement)) texts.push(node.textContent ?? "");
    for (const element of document.querySelectorAll("[aria-label], [placeholder], [alt], [title]"))
      if (shown(element)) for (const name of ["aria-label", "placeholder", "alt", "title"]) texts.push(element.getAttribute(name) ?? "");
    for (const element of document.querySelectorAll<HTMLElement>("button, a, label, h1, h2, h3, p, li, td, th, span")) {
      const { overflowX } = getComputedStyle(element);
      const isHidden = overflowX === "hidden" || overflowX === "clip";
      if (isHidden && element.clientWidth > 1 && element.scrollWidth > element.clientWidth + 1) cut.push(element.textContent ?? "");
    }
    return { texts, cut };
  });
}

/** How wide the page is, once what is drawn for a width has been drawn again: on a busy machine that takes more than a moment. */
async function widthOf(page: Page, width: number): Promise<number> {
  let wide = Number.POSITIVE_INFINITY;
  for (let looks = 0; looks < 15 && wide > width; looks++) {
    if (looks > 0) await page.waitForTimeout(200);
    wide = await page.evaluate(() => document.documentElement.scrollWidth);
  }
  return wide;
}

/** Days and money are written by the browser for the language that the page names. */
const BY_INTL = /\b(Mon|Tue|Wed|Thu|Fri|Sat|Sun|Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sept?|Oct|Nov|Dec)\b|US\$/g;

/** A text in which no letter has an accent, and which is neither data nor a unit. */
function isUntranslated(text: string, known: ReadonlySet<string>): boolean {
  const trimmed = text.replace(BY_INTL, "").trim();
  if (!/[A-Za-z]{2}/.test(trimmed) || /[À-ɏḀ-ỿ]/.test(trimmed) || known.has(trimmed)) return false;
  return trimmed
    .split(/[\s,;:·()/–→]+/)
    .some((word) => /[A-Za-z]{2}/.test(word) && !known.has(word) && !NOT_WORDS.has(word.replace(/[.…]$/, "")));
}

test("no room says anything that stands in no catalogue, and nothing is cut or runs out of the page when texts are a third longer", async ({
  page,
  request,
}) => {
  test.setTimeout(300_000);
  const known = await dataOf(request);
  const wrong: string[] = [];
  for (const path of await rooms(request)) {
    await page.goto(`${server.address}${path}${path.includes("?") ? "&" : "?"}language=pseudo`);
    if (path === "/plan") await finished(page);
    await expect(page.locator("#answer h1, #answer h2").first(), path).toBeVisible();
    await page.waitForTimeout(500);
    for (const width of [360, 1440]) {
      await page.setViewportSize({ width, height: 900 });
      // What is drawn for a width is drawn again.
      await page.waitForTimeout(200);
      const { texts, cut } = await look(page);
      wrong.push(...new Set(texts.filter((text) => isUntranslated(text, known)).map((text) => `${path}: “${text.trim()}”`)));
      wrong.push(...cut.map((text) => `${path} at ${width} px is cut: “${text}”`));
      const wide = await widthOf(page, width);
      if (wide > width) wrong.push(`${path} is ${wide} px wide in ${width} px`);
    }
  }
  expect([...new Set(wrong)]).toEqual([]);
});

test("once the shop has chosen German every room speaks it: words, days, decimal commas; the address may still ask for English", async ({
  page,
  request,
}) => {
  await page.goto(`${server.address}/`);
  await expect(page.getByRole("heading", { name: "Today" })).toBeVisible();
  const settings = await (await request.get(`${server.address}/api/settings`)).json();
  await request.patch(`${server.address}/api/settings`, { data: { language: "de" }, headers: { "If-Match": `"${settings.version}"` } });
  await page.goto(`${server.address}/`);
  await expect(page.getByRole("heading", { name: "Heute" })).toBeVisible();
  await expect(page.locator("html")).toHaveAttribute("lang", "de");
  await page.getByRole("link", { name: "Schliffplan" }).click();
  await finished(page);
  await expect(page.getByText(/^Nehmen Sie /)).toBeVisible();
  await expect(
    page
      .locator(".candidates tbody td")
      .filter({ hasText: /^\d+,\d ft/ })
      .first(),
  ).toBeVisible();
  // A little film is written with a comma on the chart too.
  await expect(page.locator(".lane-chart svg").getByText("0,3", { exact: true }).first()).toBeVisible();
  await page.goto(`${server.address}/?language=en`);
  await expect(page.getByRole("heading", { name: "Today" })).toBeVisible();
});
