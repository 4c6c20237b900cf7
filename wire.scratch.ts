import { chromium } from "@playwright/test";
import { findBrowser } from "./tools/browser.mjs";
import { childServer } from "./tools/childServer.ts";
import { rmSync } from "node:fs";
const { path } = await findBrowser();
rmSync("/tmp/fastw/shop", { recursive: true, force: true });
const server = await childServer(["--demonstration", "--data", "/tmp/fastw/shop"]);
const browser = await chromium.launch({ executablePath: path!, args: ["--no-sandbox", "--disable-gpu"] });
const ids = async (t: string) => `/${t}/${(await (await fetch(`${server.address}/api/${t}`)).json()).items[0].id}`;
const rooms: Record<string, string> = { today: "/", ball: await ids("balls"), ticket: await ids("tickets"), intake: "/intake", plan: "/plan", lanes: "/lanes", stock: "/stock" };
for (const [name, p] of Object.entries(rooms)) {
  const context = await browser.newContext({ serviceWorkers: "block" });
  const page = await context.newPage();
  const cdp = await context.newCDPSession(page); await cdp.send("Network.enable");
  const urls = new Map<string, string>(); const sizes: [string, number][] = [];
  cdp.on("Network.requestWillBeSent", (e: any) => urls.set(e.requestId, e.request.url));
  cdp.on("Network.loadingFinished", (e: any) => sizes.push([urls.get(e.requestId) ?? "?", e.encodedDataLength]));
  await page.goto(server.address + p, { waitUntil: "networkidle" });
  await page.waitForTimeout(500);
  console.log("==", name, sizes.length, Math.round(sizes.reduce((s, [, n]) => s + n, 0) / 1000), "kB");
  if (process.argv.includes(name)) for (const [u, n] of sizes.sort((a, b) => b[1] - a[1])) console.log(String(n).padStart(8), u.replace(server.address, ""));
  await context.close();
}
await browser.close(); await server.stop();
