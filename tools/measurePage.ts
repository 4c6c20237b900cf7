/**
 * `npm run measure-page`: how soon the page is there and how soon it answers, on this machine, as a table in docs/performance.md.
 * Medians of five runs in a browser without a cache; what is asked of the engine is the example that the plan opens with. `-- --wire`: only what is on the wire.
 */
import { rmSync } from "node:fs";
import { join } from "node:path";
import { type Browser, chromium, type Page } from "@playwright/test";
import { findBrowser } from "./browser.mjs";
import { childServer } from "./childServer.ts";
import { MACHINE, writeSection } from "./performancePage.ts";
import { bundleWeb, compile, ROOT } from "./setup.mjs";
import { wireOf } from "./wire.ts";

const RUNS = 5;
const SHOP = join(ROOT, "dist", ".measured-shop");

interface Run {
  readonly todayPaintMs: number;
  readonly planPaintMs: number;
  readonly planFirstMs: number;
  readonly planFinalMs: number;
  readonly planChangedMs: number;
  readonly typingMs: number;
}

const WORDS: Readonly<Record<keyof Run, string>> = {
  todayPaintMs: "Today: first paint with content, ms",
  planPaintMs: "finish plan: first paint with content, ms",
  planFirstMs: "finish plan: first answer after the address is opened, ms",
  planFinalMs: "finish plan: final answer (seven finishes, 64 worlds), ms",
  planChangedMs: "finish plan: final answer after a changed figure, ms",
  typingMs: "typing into the form: longest time from key to picture, ms",
};

if ((await compile()) !== 0 || (await bundleWeb()) !== 0) throw new Error("The program does not build.");
const { path: executablePath } = await findBrowser();
if (executablePath === null) throw new Error("No browser to measure with.");
rmSync(SHOP, { recursive: true, force: true });
const server = await childServer(["--demonstration", "--data", SHOP]);
const browser = await chromium.launch({ executablePath, args: ["--no-sandbox", "--disable-gpu"] });
try {
  if (!process.argv.includes("--wire")) await pageMeasured(browser, server.address);
  const wire = await wireSection(browser, server.address);
  writeSection("On the wire", wire);
  console.log(wire);
} finally {
  await browser.close();
  await server.stop();
}

/** How soon the page is there, and how soon it answers. */
async function pageMeasured(browser: Browser, address: string): Promise<void> {
  const runs: Run[] = [];
  for (let run = 0; run < RUNS; run++) runs.push(await measured(browser, address));
  const rows = (Object.keys(WORDS) as (keyof Run)[]).map((key) => {
    const sorted = runs.map((run) => run[key]).sort((a, b) => a - b);
    return `| ${WORDS[key]} | ${Math.round(sorted[(RUNS - 1) / 2])} | ${Math.round(sorted[0])}–${Math.round(sorted[RUNS - 1])} |`;
  });
  const section = `Written by \`npm run measure-page\` on ${MACHINE}, Chromium ${browser.version()}; medians of ${RUNS} runs without a cache, server and browser on the same machine.

| what | median | from–to |
|---|---:|---:|
${rows.join("\n")}`;
  writeSection("The page", section);
  console.log(section);
}

/** What a first visit costs, room by room. */
async function wireSection(browser: Browser, address: string): Promise<string> {
  const firstOf = async (things: string): Promise<string> => {
    const { items } = (await (await fetch(`${address}/api/${things}`)).json()) as { readonly items: readonly { readonly id: string }[] };
    return `/${things}/${items[0].id}`;
  };
  const rooms: readonly (readonly [string, string])[] = [
    ["Today", "/"],
    ["a ball", await firstOf("balls")],
    ["a ticket", await firstOf("tickets")],
    ["Take in", "/intake"],
    ["finish plan", "/plan"],
    ["Lanes", "/lanes"],
    ["Stock", "/stock"],
  ];
  const rows: string[] = [];
  for (const [name, path] of rooms) {
    const { kb, requests, askedKb, asked } = await wireOf(browser, `${address}${path}`);
    rows.push(`| ${name} | ${Math.round(kb)} | ${requests} | ${Math.round(askedKb)} | ${asked} |`);
  }
  return `Written by \`npm run measure-page\`: what a browser that has never seen the page loads until a room is quiet, heads and bodies as they are sent, over the demonstration shop. Behind it the service worker takes what other rooms want, once.

| room | kB | requests | of these asked of the records, kB | requests |
|---|---:|---:|---:|---:|
${rows.join("\n")}`;
}

async function measured(browser: Browser, address: string): Promise<Run> {
  const today = await browser.newPage();
  await today.goto(address, { waitUntil: "networkidle" });
  const todayPaintMs = await paint(today);
  await today.close();

  const page = await browser.newPage();
  await page.addInitScript(() => {
    Object.assign(globalThis, { longest: 0 });
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries())
        Object.assign(globalThis, { longest: Math.max((globalThis as unknown as { longest: number }).longest, entry.duration) });
    }).observe({ type: "event", durationThreshold: 16, buffered: true } as PerformanceObserverInit);
  });
  const begun = Date.now();
  await page.goto(`${address}/plan`);
  await page.waitForSelector(".candidates");
  const planFirstMs = Date.now() - begun;
  await page.waitForSelector("#answer[data-status=done]", { timeout: 60_000 });
  const planFinalMs = Date.now() - begun;
  const planPaintMs = await paint(page);
  const speed = page.getByLabel("Speed", { exact: false }).first();
  await speed.fill("");
  await speed.pressSequentially("19.5", { delay: 60 });
  const changed = Date.now();
  await page.waitForSelector("#answer[data-status=working]").catch(() => undefined);
  await page.waitForSelector("#answer[data-status=done]", { timeout: 60_000 });
  const planChangedMs = Date.now() - changed;
  const typingMs = await page.evaluate(() => (globalThis as unknown as { longest: number }).longest);
  await page.close();
  return { todayPaintMs, planPaintMs, planFirstMs, planFinalMs, planChangedMs, typingMs };
}

function paint(page: Page): Promise<number> {
  return page.evaluate(() => performance.getEntriesByName("first-contentful-paint")[0]?.startTime ?? Number.NaN);
}
