/**
 * What `npm start`, `npm test` and `npm run build` share. Plain JavaScript on Node alone: it must run on a
 * fresh clone, before anything is installed.
 */
import { spawn } from "node:child_process";
import { chmodSync, existsSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, extname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { brotliCompressSync, constants, gzipSync } from "node:zlib";
import { whyNotInstalled } from "./whyNotInstalled.mjs";

export const ROOT = dirname(dirname(fileURLToPath(import.meta.url)));

const LEAST_NODE = [20, 19];
const WEB_STAMP = join(ROOT, "dist", "web", ".built");
const CLI_ENTRY = join(ROOT, "dist", "cli", "main.js");

/** Ends the process with a plain sentence if this Node is too old for the code that follows. */
export function requireNode() {
  const [major = 0, minor = 0] = process.versions.node.split(".").map(Number);
  const [leastMajor, leastMinor] = LEAST_NODE;
  if (major > leastMajor || (major === leastMajor && minor >= leastMinor)) return;
  console.error(`Gritwright needs Node ${LEAST_NODE.join(".")} or newer; this is ${process.versions.node}.`);
  process.exit(1);
}

/**
 * Runs a program in the project's folder with its output on this terminal.
 * @param {string} command
 * @param {readonly string[]} args
 * @param {{ env?: Record<string, string>, shell?: boolean, hear?: (text: string) => void }} [options] `hear` is told what it complains of
 * @returns {Promise<number>} the exit code; 1 when a signal ended it
 */
export function run(command, args, options = {}) {
  return new Promise((resolve, reject) => {
    const child = spawn(command, args, {
      cwd: ROOT,
      stdio: ["inherit", "inherit", options.hear === undefined ? "inherit" : "pipe"],
      env: { ...process.env, ...options.env },
      shell: options.shell ?? false,
    });
    child.stderr?.on("data", (bytes) => {
      process.stderr.write(bytes);
      options.hear?.(String(bytes));
    });
    child.on("error", reject);
    child.on("close", (code) => resolve(code ?? 1));
  });
}

/**
 * Runs the program of an installed package with this very Node: no shell, so the same on every system.
 * @param {string} packageName
 * @param {string} binName
 * @param {readonly string[]} args
 * @param {Record<string, string>} [env]
 */
export function runTool(packageName, binName, args, env = {}) {
  const manifestPath = join(ROOT, "node_modules", ...packageName.split("/"), "package.json");
  const manifest = JSON.parse(readFileSync(manifestPath, "utf8"));
  const bin = typeof manifest.bin === "string" ? manifest.bin : manifest.bin[binName];
  return run(process.execPath, [join(dirname(manifestPath), bin), ...args], { env });
}

/** Installs what package-lock.json names if it is not there, or not in that version; the native SQLite is compiled where no built one can be had, or left out. */
export async function ensureInstalled() {
  requireNode();
  if (isInstalled()) return;
  console.log("Installing the packages named in package-lock.json …");
  const npm = process.env.npm_execpath;
  const args = ["ci", "--no-audit", "--no-fund"];
  let said = "";
  const hear = (/** @type {string} */ text) => {
    said += text;
  };
  const code = npm?.endsWith(".js")
    ? await run(process.execPath, [npm, ...args], { hear })
    : await run("npm", args, { shell: process.platform === "win32", hear });
  if (code !== 0) {
    console.error(whyNotInstalled(said));
    process.exit(code);
  }
}

function isInstalled() {
  const installedPath = join(ROOT, "node_modules", ".package-lock.json");
  if (!existsSync(installedPath)) return false;
  const wanted = JSON.parse(readFileSync(join(ROOT, "package-lock.json"), "utf8")).packages;
  const installed = JSON.parse(readFileSync(installedPath, "utf8")).packages;
  return Object.entries(wanted).every(([path, entry]) => {
    const mayBeMissing = path === "" || (entry.optional === true && installed[path] === undefined);
    return mayBeMissing || installed[path]?.version === entry.version;
  });
}

/**
 * Compiles what runs (only what is stale), and makes the command line executable.
 * @returns {Promise<number>} exit code of the compiler
 */
export async function compile() {
  const code = await runTool("typescript", "tsc", ["-b", "src/cli", "src/web"]);
  if (existsSync(CLI_ENTRY)) chmodSync(CLI_ENTRY, 0o755);
  return code;
}

/**
 * Compiles what runs and type-checks everything else: tests, tools, benchmarks.
 * @returns {Promise<number>} exit code of the compiler
 */
export async function typeCheck() {
  const compiled = await compile();
  const checked = await runTool("typescript", "tsc", ["-b"]);
  return compiled === 0 ? checked : compiled;
}

/**
 * Builds the web page, with a catalogue for each language, into dist/web when a source is newer than the last build.
 * @returns {Promise<number>} exit code of the bundler
 */
export async function bundleWeb() {
  if (!existsSync(join(ROOT, "src", "web", "index.html"))) return 0;
  const newest = Math.max(
    newestChange(join(ROOT, "src")),
    ...["vite.config.ts", "package-lock.json", join("tools", "page", "languages.ts")]
      .map((name) => join(ROOT, name))
      .map((path) => (existsSync(path) ? statSync(path).mtimeMs : 0)),
  );
  if (existsSync(WEB_STAMP) && statSync(WEB_STAMP).mtimeMs > newest) return 0;
  const code = await runTool("vite", "vite", ["build", "--logLevel", "warn"]);
  if (code !== 0) return code;
  squeeze(join(ROOT, "dist", "web"));
  // Of before there was one page for all languages.
  rmSync(join(ROOT, "dist", "web-de"), { recursive: true, force: true });
  mkdirSync(dirname(WEB_STAMP), { recursive: true });
  writeFileSync(WEB_STAMP, "");
  return 0;
}

/** What shrinks: text. Pictures and fonts are squeezed already. */
const TEXTS = new Set([".html", ".js", ".css", ".svg", ".json", ".webmanifest"]);
/** Below this a file is sent as it is, bytes. */
const WORTH_SQUEEZING = 1000;

/** Lays every text under a folder beside itself, squeezed as far as it goes: it is done once and sent often. @param {string} folder */
function squeeze(folder) {
  for (const entry of readdirSync(folder, { recursive: true, withFileTypes: true })) {
    const path = join(entry.parentPath, entry.name);
    if (!entry.isFile() || !TEXTS.has(extname(entry.name)) || statSync(path).size < WORTH_SQUEEZING) continue;
    const bytes = readFileSync(path);
    writeFileSync(`${path}.br`, brotliCompressSync(bytes, { params: { [constants.BROTLI_PARAM_SIZE_HINT]: bytes.length } }));
    writeFileSync(`${path}.gz`, gzipSync(bytes, { level: constants.Z_BEST_COMPRESSION }));
  }
}

/** @param {string} folder @returns {number} newest modification time under it, ms */
export function newestChange(folder) {
  let newest = 0;
  for (const entry of readdirSync(folder, { withFileTypes: true })) {
    const path = join(folder, entry.name);
    newest = Math.max(newest, entry.isDirectory() ? newestChange(path) : statSync(path).mtimeMs);
  }
  return newest;
}

/** Loads an installed package as CommonJS or ESM from the project's folder. @param {string} name */
export function loadInstalled(name) {
  return import(createRequire(join(ROOT, "package.json")).resolve(name));
}
