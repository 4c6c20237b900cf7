import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { chromium } from "@playwright/test";
import { findBrowser } from "./browser.mjs";

/* `npx tsx tools/marks.ts`: draws the mark as the pictures that a phone or a desktop shows for an installed page. */

const PUBLIC = join(import.meta.dirname, "..", "src", "web", "public");
const PAPER = "#f7f4ec";
/** A launcher may cut a maskable picture to a circle of four fifths: the mark keeps inside it. */
const SAFE = 0.72;

const { path } = await findBrowser();
if (path === null) throw new Error("No browser to draw with.");
const browser = await chromium.launch({ executablePath: path, args: ["--no-sandbox", "--disable-gpu"] });
const mark = readFileSync(join(PUBLIC, "mark.svg"), "utf8");
for (const { name, size, share, ground } of [
  { name: "mark-192.png", size: 192, share: 1, ground: "transparent" },
  { name: "mark-512.png", size: 512, share: 1, ground: "transparent" },
  { name: "mark-whole-512.png", size: 512, share: SAFE, ground: PAPER },
]) {
  const page = await browser.newPage({ viewport: { width: size, height: size } });
  const inside = `width:${100 * share}%;display:block`;
  await page.setContent(
    `<body style="margin:0;height:100vh;display:grid;place-items:center;background:${ground}">${mark.replace("<svg", `<svg style="${inside}"`)}</body>`,
  );
  writeFileSync(join(PUBLIC, name), await page.screenshot({ omitBackground: true }));
  await page.close();
}
await browser.close();
