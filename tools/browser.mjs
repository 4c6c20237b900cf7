/** Finds a Chromium that really starts, for the browser tests. */
import { spawnSync } from "node:child_process";
import { existsSync, readFileSync } from "node:fs";
import { delimiter, join } from "node:path";
import { loadInstalled, runTool } from "./setup.mjs";

const PROGRAM_NAMES = ["chromium", "chromium-browser", "google-chrome", "google-chrome-stable", "chrome"];
const FIXED_PLACES = [
  "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
  "/Applications/Chromium.app/Contents/MacOS/Chromium",
  "C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe",
  "C:\\Program Files (x86)\\Google\\Chrome\\Application\\chrome.exe",
  "C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe",
];
const PAGE = "data:text/html,<p>gritwright-ready</p>";

/**
 * In order: $CHROMIUM, a system browser, Playwright's own (downloaded if it can be), the one that ships inside
 * npm for Linux, and apt when this is root on a Debian.
 * @returns {Promise<{ path: string } | { path: null, tried: readonly string[] }>}
 */
export async function findBrowser() {
  const tried = [];
  for (const [name, offers] of /** @type {const} */ ([
    ["$CHROMIUM", fromEnvironment],
    ["a system Chromium or Chrome", fromSystem],
    ["playwright install chromium", fromPlaywright],
    ["@sparticuz/chromium", fromNpm],
    ["apt-get install chromium", fromApt],
  ])) {
    const paths = await offers().catch(() => []);
    const path = paths.find(starts);
    if (path !== undefined) return { path };
    tried.push(name);
  }
  return { path: null, tried };
}

/** @param {string} path whether this browser renders a page here and now */
function starts(path) {
  const args = ["--headless", "--no-sandbox", "--disable-gpu", "--no-first-run", "--dump-dom", PAGE];
  const result = spawnSync(path, args, { encoding: "utf8", timeout: 60_000 });
  return result.status === 0 && result.stdout.includes("gritwright-ready");
}

async function fromEnvironment() {
  return process.env.CHROMIUM === undefined ? [] : [process.env.CHROMIUM];
}

async function fromSystem() {
  const folders = (process.env.PATH ?? "").split(delimiter).filter((folder) => folder !== "");
  const onPath = folders.flatMap((folder) => PROGRAM_NAMES.map((name) => join(folder, name)));
  return [...onPath, ...FIXED_PLACES].filter((path) => existsSync(path));
}

async function fromPlaywright() {
  const { chromium } = await loadInstalled("@playwright/test");
  if (!existsSync(chromium.executablePath())) await runTool("@playwright/test", "playwright", ["install", "chromium"]);
  return [chromium.executablePath()];
}

async function fromNpm() {
  if (process.platform !== "linux") return [];
  const { default: chromium } = await loadInstalled("@sparticuz/chromium");
  return [await chromium.executablePath()];
}

async function fromApt() {
  const isDebianRoot = process.getuid?.() === 0 && existsSync("/etc/debian_version");
  if (!isDebianRoot || !readFileSync("/etc/os-release", "utf8").includes("debian")) return [];
  for (const args of [["update"], ["install", "-y", "--no-install-recommends", "chromium"]]) {
    spawnSync("apt-get", args, { stdio: "inherit", env: { ...process.env, DEBIAN_FRONTEND: "noninteractive" } });
  }
  return fromSystem();
}
