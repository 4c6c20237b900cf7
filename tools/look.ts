/** `npm run look`: every room of the running demonstration at three widths in both looks, on one page: dist/look/index.html. For the eye; kept out of git. */
import { mkdirSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { type Browser, chromium } from "@playwright/test";
import { findBrowser } from "./browser.mjs";
import { childServer } from "./childServer.ts";
import { bundleWeb, compile, ROOT } from "./setup.mjs";

const OUT = join(ROOT, "dist", "look");
const WIDTHS = [360, 820, 1440];
const LOOKS = ["paper", "bench"];
/** Pictures and workers are done by then. */
const SETTLES_MS = 800;
const PLAN_MS = 60_000;

interface Shot {
  readonly room: string;
  readonly file: string;
  readonly width: number;
  readonly look: string;
}

if ((await compile()) !== 0 || (await bundleWeb()) !== 0) throw new Error("The program does not build.");
const { path: executablePath } = await findBrowser();
if (executablePath === null) throw new Error("No browser to look with.");
rmSync(OUT, { recursive: true, force: true });
mkdirSync(OUT, { recursive: true });

const server = await childServer(["--demonstration", "--data", join(OUT, "shop")]);
const browser = await chromium.launch({ executablePath, args: ["--no-sandbox", "--disable-gpu"] });
try {
  const shots: Shot[] = [];
  for (const look of LOOKS) for (const width of WIDTHS) shots.push(...(await looked(browser, server.address, width, look)));
  writeFileSync(join(OUT, "index.html"), pageOf(shots));
  console.log(`${shots.length} pictures: ${join(OUT, "index.html")}`);
} finally {
  await browser.close();
  await server.stop();
}

/** Every room by its address, each with something in it. */
async function roomsOf(address: string): Promise<readonly string[]> {
  const first = async (path: string) => (await (await fetch(`${address}/api/${path}`)).json()).items[0];
  const { ticket } = await first("queue");
  const note = await first("shot-notes");
  return [
    "/",
    "/intake",
    "/lane-side",
    `/tickets/${ticket.id}`,
    `/bench/${ticket.id}`,
    `/measure?ball=${ticket.ballId}`,
    "/plan",
    `/balls/${ticket.ballId}`,
    `/bowlers/${note.bowlerId}`,
    `/bags/${note.bowlerId}`,
    `/wrong?ball=${ticket.ballId}`,
    "/held",
    "/lanes",
    `/lanes/${note.laneId}`,
    `/patterns/${note.patternId}`,
    "/stock",
    "/money",
    "/shop",
    ...["ticket", "label", "care", "measures"].map((what) => `/print/${what}/${ticket.id}`),
  ];
}

async function looked(chosen: Browser, address: string, width: number, look: string): Promise<readonly Shot[]> {
  const page = await chosen.newPage({ viewport: { width, height: 900 } });
  await page.addInitScript((chosen) => localStorage.setItem("gritwright.look", chosen), look);
  const shots: Shot[] = [];
  for (const room of await roomsOf(address)) {
    await page.goto(`${address}${room}`);
    await page.locator("#answer").waitFor();
    if (room === "/plan") await page.locator("#answer[data-status=done]").waitFor({ timeout: PLAN_MS });
    await page.waitForTimeout(SETTLES_MS);
    const name = room
      .split(/[/?]/)
      .filter((part) => /^[a-z-]+$/.test(part))
      .join("-");
    const file = `${name === "" ? "today" : name}-${look}-${width}.png`;
    await page.screenshot({ path: join(OUT, file), fullPage: true });
    shots.push({ room: name === "" ? "today" : name, file, width, look });
  }
  await page.close();
  return shots;
}

function pageOf(shots: readonly Shot[]): string {
  const rooms = [...new Set(shots.map(({ room }) => room))];
  const pictures = (room: string) =>
    shots
      .filter((shot) => shot.room === room)
      .map(
        ({ file, width, look }) =>
          `<figure><img src="${file}" alt="${room}, ${look}, ${width} px" loading="lazy"><figcaption>${look}, ${width} px</figcaption></figure>`,
      )
      .join("");
  const style =
    "body{font-family:sans-serif}div{display:flex;gap:12px;align-items:start;overflow-x:auto}img{height:720px;border:1px solid #999}";
  return `<!doctype html><html lang="en"><meta charset="utf-8"><title>Every room</title><style>${style}</style>${rooms
    .map((room) => `<h2 id="${room}">${room}</h2><div>${pictures(room)}</div>`)
    .join("")}</html>\n`;
}
