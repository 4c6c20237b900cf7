/**
 * `npm test`: installs, builds, lints and runs every test. The last line it prints is the true total, alone:
 * type-check, web build, lint and unused code count as one each, tests as their runners report them.
 * On a build machine (CI=true) each physical term is also left out in turn, the drills of `npm run chaos` are run in their short form, and the tests of
 * records and server once more on the other lines of Node, and the benchmark's short form; that takes some minutes more.
 */
import { existsSync, mkdirSync, readFileSync, rmSync } from "node:fs";
import { createServer } from "node:net";
import { join } from "node:path";
import { findBrowser } from "./browser.mjs";
import { testOnOtherNodes } from "./otherNodes.mjs";
import { bundleWeb, ensureInstalled, ROOT, runTool, typeCheck } from "./setup.mjs";
import { addTotals, failedInPlaywright, failedInVitest, fromPlaywright, fromVitest, NONE, totalsLine } from "./totals.mjs";

const REPORTS = join(ROOT, "dist", ".reports");
/** @type {string[]} */
const notices = [];

await ensureInstalled();
rmSync(REPORTS, { recursive: true, force: true });
mkdirSync(REPORTS, { recursive: true });

let totals = NONE;
for (const part of [
  () => check("type-check", typeCheck),
  () => check("web build", bundleWeb),
  () => check("lint and format", () => runTool("@biomejs/biome", "biome", ["check", "--error-on-warnings"])),
  () => check("unused code", () => runTool("knip", "knip", [])),
  runVitest,
  runBrowserTests,
  ...(process.env.CI === "true"
    ? [
        () =>
          check("every physical term is missed when left out", () => runTool("tsx", "tsx", ["--conditions=source", "tools/leave-out.ts"])),
        () => check("nothing acknowledged is lost", () => runTool("tsx", "tsx", ["--conditions=source", "bench/chaos.ts", "--short"])),
        () =>
          check("no ratio of the benchmark has halved", () => runTool("tsx", "tsx", ["--conditions=source", "bench/main.ts", "--short"])),
        runOtherNodes,
      ]
    : []),
]) {
  const start = performance.now();
  totals = addTotals(totals, await part());
  console.log(`(${Math.round((performance.now() - start) / 1000)} s)`);
}
for (const notice of notices) console.log(notice);
process.exitCode = totals.failed === 0 ? 0 : 1;
console.log(totalsLine(totals));

/** @param {string} name @param {() => Promise<number>} command */
async function check(name, command) {
  console.log(`\n— ${name}`);
  const passed = (await command()) === 0;
  if (!passed) notices.push(`Failed: ${name}`);
  return { ...NONE, [passed ? "passed" : "failed"]: 1 };
}

async function runVitest() {
  console.log("\n— tests");
  const file = join(REPORTS, "vitest.json");
  const stray = join(REPORTS, "stray.json");
  const reporters = ["default", "json", "./tools/strayErrors.mjs"].map((name) => `--reporter=${name}`);
  const code = await runTool("vitest", "vitest", ["run", ...reporters, `--outputFile.json=${file}`], {
    COMPILED: "1",
    STRAY_ERRORS: stray,
  });
  const report = readReport(file);
  const strayErrors = readReport(stray) ?? [];
  notices.push(
    ...failedInVitest(report, ROOT),
    ...strayErrors.map((/** @type {any} */ error) => `Failed: outside every test: ${error.stack}`),
  );
  return fromVitest(report, code);
}

async function runOtherNodes() {
  console.log("\n— records and server on other Nodes");
  return testOnOtherNodes();
}

async function runBrowserTests() {
  console.log("\n— browser tests");
  if (!existsSync(join(ROOT, "playwright.config.ts"))) return NONE;
  const browser = await findBrowser();
  if (browser.path === null) return withoutBrowser(browser.tried);
  const file = join(REPORTS, "playwright.json");
  const env = {
    CHROMIUM: browser.path,
    GRITWRIGHT_TEST_PORT: `${await freePort()}`,
    PLAYWRIGHT_JSON_OUTPUT_NAME: file,
    PLAYWRIGHT_JSON_OUTPUT_FILE: file,
  };
  const code = await runTool("@playwright/test", "playwright", ["test", "--reporter=list,json"], env);
  const report = readReport(file);
  notices.push(...failedInPlaywright(report));
  return fromPlaywright(report, code);
}

/** Skips by name and says how to get a browser; on a build machine a skip is a failure. @param {readonly string[]} tried */
function withoutBrowser(tried) {
  const onBuildMachine = process.env.CI === "true";
  notices.push(
    `${onBuildMachine ? "Failed" : "Skipped"}: browser tests. No Chromium starts here; tried ${tried.join(", ")}. ` +
      "Install Chromium or Chrome, or put the path of one into CHROMIUM.",
  );
  return { ...NONE, [onBuildMachine ? "failed" : "skipped"]: 1 };
}

/** A port that nobody listens on just now, so that two runs on one machine do not meet. @returns {Promise<number>} */
function freePort() {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.on("error", reject);
    probe.listen(0, "127.0.0.1", () => {
      const address = probe.address();
      probe.close(() => resolve(typeof address === "object" && address !== null ? address.port : 0));
    });
  });
}

/** @param {string} file @returns {any} the report, or null if the runner died before it wrote one */
function readReport(file) {
  return existsSync(file) ? JSON.parse(readFileSync(file, "utf8")) : null;
}
