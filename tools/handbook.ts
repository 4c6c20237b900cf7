/**
 * `npm run handbook`: the pictures of docs/handbook.md and of the README, taken of the running demonstration as WebP.
 *
 *   npm run handbook -- guide counter     only these
 */
import { mkdirSync, rmSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { chromium, type Page } from "@playwright/test";
import { findBrowser } from "./browser.mjs";
import { childServer } from "./childServer.ts";
import { bundleWeb, compile, ROOT } from "./setup.mjs";

const OUT = join(ROOT, "docs", "pictures", "handbook");
const WIDTH = 1000;
/** Of a long room its beginning is enough. */
const MOST_HEIGHT = 1500;
/** Left around a part of a room. */
const MARGIN = 12;
const QUALITY = 0.72;
/** Pictures and workers are done by then. */
const SETTLES_MS = 1200;
const COMPUTES_MS = 120_000;
/** So long that the clock and the texture have moved. */
const SIDE_RUNS_MS = 6000;

interface Taken {
  readonly name: string;
  readonly path: string;
  /** Brings the room into the state that is shown. */
  readonly ready?: (page: Page) => Promise<void>;
  /** What is shown, where it is not the room from its top. */
  readonly of?: string;
  /** How much of it, px from its top. */
  readonly height?: number;
}

if ((await compile()) !== 0 || (await bundleWeb()) !== 0) throw new Error("The program does not build.");
const { path: executablePath } = await findBrowser();
if (executablePath === null) throw new Error("No browser to take pictures with.");
const shop = join(ROOT, "dist", "handbook-shop");
rmSync(shop, { recursive: true, force: true });
mkdirSync(OUT, { recursive: true });

const server = await childServer(["--demonstration", "--data", shop]);
const browser = await chromium.launch({ executablePath, args: ["--no-sandbox", "--disable-gpu"] });
try {
  const page = await browser.newPage({ viewport: { width: WIDTH, height: 900 } });
  let bytes = 0;
  const only = process.argv.slice(2);
  for (const one of (await picturesOf(server.address)).filter(({ name }) => only.length === 0 || only.includes(name))) {
    await take(page, server.address, one);
    bytes += statSync(join(OUT, `${one.name}.webp`)).size;
  }
  console.log(`docs/pictures/handbook: ${Math.round(bytes / 1000)} kB in all`);
} finally {
  await browser.close();
  await server.stop();
}

interface Ticketed {
  readonly id: string;
  readonly ballId: string;
  readonly state: string;
  readonly stages: readonly { readonly kind: string | null }[];
}

/** The day in its order. */
async function picturesOf(address: string): Promise<readonly Taken[]> {
  const items = async (path: string) => (await (await fetch(`${address}/api/${path}`)).json()).items;
  const queue: readonly { readonly ticket: Ticketed }[] = await items("queue");
  // One that still has work to be done.
  const { ticket } = queue.find((one) => one.ticket.state === "in work" || one.ticket.state === "received") ?? queue[0];
  const isToSand = ({ state, stages }: Ticketed) =>
    (state === "in work" || state === "received") && stages.every(({ kind }) => kind !== "extract");
  const toSand = queue.find((one) => isToSand(one.ticket))?.ticket ?? ticket;
  const [note] = await items("shot-notes");
  const balls: readonly { readonly id: string; readonly layout: object | null }[] = await items("balls?limit=200");
  const laidOut = balls.find(({ layout }) => layout !== null) ?? balls[0];
  return [
    { name: "today", path: "/" },
    { name: "take-in", path: `/intake?bowler=${note.bowlerId}`, ready: takeFirstBall },
    { name: "wrong", path: `/wrong?ball=${ticket.ballId}`, ready: complain },
    { name: "measuring", path: `/bowlers/${note.bowlerId}`, ready: measureDelivery, of: ".measuring" },
    { name: "plan", path: "/plan", ready: planned },
    { name: "counter", path: `/plan?ticket=${ticket.id}`, ready: planned, of: "#answer", height: 900 },
    { name: "ticket", path: `/tickets/${ticket.id}` },
    { name: "bench", path: `/bench/${ticket.id}` },
    { name: "guide", path: `/bench/${toSand.id}`, ready: firstSide },
    { name: "measure", path: `/measure?ball=${ticket.ballId}` },
    { name: "ball", path: `/balls/${laidOut.id}` },
    { name: "care-card", path: `/print/care/${ticket.id}` },
    { name: "lane", path: `/lanes/${note.laneId}` },
    { name: "oil-in-play", path: `/lanes/${note.laneId}`, ready: playOil, of: ".oil-in-play" },
    { name: "taught", path: `/lanes/${note.laneId}`, ready: learnHouse, of: ".taught" },
    { name: "bag", path: `/bags/${note.bowlerId}`, ready: planBag, of: ".bag-answer" },
    { name: "lane-side", path: "/lane-side", ready: findBall },
    { name: "stock", path: "/stock" },
    { name: "money", path: "/money" },
    { name: "held", path: "/held" },
  ];
}

async function measureDelivery(page: Page): Promise<void> {
  await page.getByRole("button", { name: /Measure a delivery/ }).click();
  await page.getByLabel(/Display shows/).fill("15.1");
  await page.getByLabel("Turns counted").fill("2");
  await page.getByLabel("In how many pictures").fill("88");
  await page.getByRole("table", { name: "What it says" }).waitFor();
}

/** The bowler's first ball, as it is when it comes back too early. */
async function takeFirstBall(page: Page): Promise<void> {
  await page.locator(".ball-card", { hasText: "·" }).first().click();
  await page.getByRole("button", { name: "Hooks too early" }).click();
}

async function planned(page: Page): Promise<void> {
  await page.locator("#answer[data-status=done]").waitFor({ timeout: COMPUTES_MS });
}

/** Past what is asked before a step, to a side that is being worked. */
async function firstSide(page: Page): Promise<void> {
  const start = page.getByRole("button", { name: "Spinner’s on" }).last();
  const inSight = page.getByRole("button", { name: "Can’t scan" });
  const goesOn = page.locator("button.primary:enabled");
  await goesOn.first().waitFor();
  while (!((await start.isVisible()) && (await start.isEnabled()))) {
    await ((await inSight.isVisible()) ? inSight : goesOn.first()).click();
    await page.waitForTimeout(SETTLES_MS);
  }
  await start.click();
  await page.waitForTimeout(SIDE_RUNS_MS);
}

async function complain(page: Page): Promise<void> {
  await page.getByLabel("It hooks less than it did.").check();
  await page.getByText("only this one", { exact: true }).click();
  await page.locator(".causes").waitFor();
}

/** A ball of the demonstration by a part of its name. */
async function findBall(page: Page): Promise<void> {
  await page.getByLabel("Serial number, name or telephone").fill("Grebe");
  await page.locator(".found button").first().click();
}

async function playOil(page: Page): Promise<void> {
  await page.getByRole("button", { name: "Play it" }).click();
  await page.getByRole("button", { name: "Play it" }).waitFor({ timeout: COMPUTES_MS });
  await page.getByRole("radio", { name: "After game 2" }).check({ force: true });
}

async function learnHouse(page: Page): Promise<void> {
  await page.getByRole("button", { name: "Learn from them" }).click();
  await page.getByRole("table", { name: "Before and now" }).waitFor({ timeout: COMPUTES_MS });
}

async function planBag(page: Page): Promise<void> {
  await page.getByRole("button", { name: "Work it out" }).click();
  await page.getByRole("button", { name: "Work it out" }).waitFor({ timeout: COMPUTES_MS });
}

async function take(page: Page, address: string, { name, path, ready, of, height }: Taken): Promise<void> {
  await page.goto(`${address}${path}`);
  await page.locator("#answer").waitFor();
  await ready?.(page);
  await page.waitForTimeout(SETTLES_MS);
  const whole = await page.evaluate(() => ({ x: 0, y: 0, width: innerWidth, height: document.documentElement.scrollHeight }));
  const shown = of === undefined ? whole : ((await page.locator(of).boundingBox()) ?? whole);
  const scrolled = of === undefined ? 0 : await page.evaluate(() => scrollY);
  const around = of === undefined ? 0 : MARGIN;
  const clip = {
    x: Math.max(0, shown.x - around),
    y: Math.max(0, shown.y + scrolled - around),
    width: Math.min(WIDTH, shown.width + 2 * around),
    height: Math.min(height ?? MOST_HEIGHT, shown.height + 2 * around),
  };
  const png = await page.screenshot({ fullPage: true, clip });
  writeFileSync(join(OUT, `${name}.webp`), await toWebp(page, png));
}

/** A third of the PNG's bytes, by the browser that is there anyway. */
async function toWebp(page: Page, png: Buffer): Promise<Buffer> {
  const base64 = await page.evaluate(
    async ([data, quality]) => {
      const image = new Image();
      image.src = `data:image/png;base64,${data}`;
      await image.decode();
      const canvas = document.createElement("canvas");
      canvas.width = image.naturalWidth;
      canvas.height = image.naturalHeight;
      canvas.getContext("2d")?.drawImage(image, 0, 0);
      return canvas.toDataURL("image/webp", quality as number).split(",")[1];
    },
    [png.toString("base64"), QUALITY] as const,
  );
  return Buffer.from(base64, "base64");
}
