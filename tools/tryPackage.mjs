/**
 * What a shop owner does, once through with the real npm: the package is made, installed into an empty place, started, asked, brought up to date from
 * itself with the next version's number, started again, asked, and stopped. It wants the npm registry, and minutes where the native SQLite is compiled.
 *
 *   npm run try-package [-- --without-scripts]   with the option no install script runs, as where there is no compiler: Node 22.16 or newer
 */
import { execFileSync, spawn } from "node:child_process";
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { gunzipSync, gzipSync } from "node:zlib";
import { createTar, parseTar } from "nanotar";
import { ROOT } from "./setup.mjs";

const own = mkdtempSync(join(tmpdir(), "gritwright-package-"));
const prefix = join(own, "prefix");
const scripts = process.argv.includes("--without-scripts") ? "true" : "false";
const env = {
  ...process.env,
  XDG_DATA_HOME: join(own, "data"),
  npm_config_ignore_scripts: scripts,
  npm_config_prefer_offline: "true",
};
const program = join(
  prefix,
  ...(process.platform === "win32" ? ["node_modules"] : ["lib", "node_modules"]),
  "gritwright",
  "dist",
  "cli",
  "main.js",
);

try {
  const packed = step("npm pack", () => JSON.parse(npm(["pack", "--json", "--ignore-scripts", "--pack-destination", own], ROOT)));
  const [{ filename, version }] = Array.isArray(packed) ? packed : Object.values(packed);
  const file = join(own, filename);
  mkdirSync(prefix);
  step("npm install -g into an empty place", () => npm(["install", "-g", "--prefix", prefix, "--no-audit", "--no-fund", file], own));
  await served(version);
  const next = `${version}-next.1`;
  step("gritwright update", () => run(process.execPath, [program, "update", asVersion(file, next)], own));
  await served(next);
  console.log("The package can be installed, started and brought up to date.");
} finally {
  rmSync(own, { recursive: true, force: true });
}

/** @template T @param {string} name @param {() => T} work */
function step(name, work) {
  const start = performance.now();
  const answer = work();
  console.log(`${name}: ${Math.round((performance.now() - start) / 1000)} s`);
  return answer;
}

/** @param {readonly string[]} args @param {string} cwd */
function npm(args, cwd) {
  return run("npm", args, cwd);
}

/** @param {string} command @param {readonly string[]} args @param {string} cwd */
function run(command, args, cwd) {
  return execFileSync(command, args, {
    cwd,
    env,
    encoding: "utf8",
    shell: command === "npm" && process.platform === "win32",
    maxBuffer: 64e6,
  });
}

/** The same package under another version's number. @param {string} file @param {string} version */
function asVersion(file, version) {
  const files = parseTar(Uint8Array.from(gunzipSync(readFileSync(file)))).map(({ name, data, text }) =>
    name === "package/package.json"
      ? { name, data: JSON.stringify({ ...JSON.parse(text), version }) }
      : { name, data: data ?? new Uint8Array() },
  );
  const path = join(own, `next-${version}.tgz`);
  writeFileSync(path, gzipSync(createTar(files)));
  return path;
}

/** Starts it, asks which version is well, and stops it. @param {string} version */
async function served(version) {
  const child = spawn(process.execPath, [program, "serve", "--own", "--no-open", "--port", "0"], {
    cwd: own,
    env,
    stdio: ["ignore", "pipe", "inherit"],
  });
  const ended = new Promise((resolve) => child.on("exit", resolve));
  let address = "";
  for await (const bytes of child.stdout) {
    address = /http:\/\/[\d.]+:\d+/.exec(String(bytes))?.[0] ?? "";
    if (address !== "") break;
  }
  if (address === "") throw new Error("The program ended before it listened.");
  const health = await (await fetch(`${address}/api/health`)).json();
  const page = await fetch(address);
  // A version on trial is to be seen to be well before it is stopped.
  await new Promise((resolve) => setTimeout(resolve, 2000));
  child.kill("SIGTERM");
  const code = await ended;
  if (health.version !== version || health.state !== "well" || page.status !== 200 || code !== 0)
    throw new Error(
      `Wanted version ${version}, well, with a page, and an end with 0: ${JSON.stringify({ health, page: page.status, code })}`,
    );
  console.log(`Version ${version} serves, and stops when asked to.`);
}
