/**
 * Builds the container and sees it serve, with docker or podman where one answers; else does the very steps of deploy/Containerfile in a plain folder, as
 * a user who is not root, with the folders of the container put under it. It wants the npm registry, and in a plain folder Node 24 as the container has it.
 *
 *   npm run try-container
 */
import { execFileSync, spawn, spawnSync } from "node:child_process";
import { chmodSync, chownSync, mkdirSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as sleep } from "node:timers/promises";
import { ROOT } from "./setup.mjs";

const FILE = join(ROOT, "deploy", "Containerfile");
const NAME = "gritwright.home.arpa";
const PASSWORD = "nine lanes and a half";
/** Number of the container's user. */
const USER = 1000;
const MINUTE = 60_000;

const builder = ["docker", "podman"].find((name) => spawnSync(name, ["info"], { timeout: 10_000 }).status === 0);
if (builder === undefined) await inPlainFolder();
else await inContainer(builder);
console.log(`The container's steps end in a server that is well (${builder ?? "no builder here: in a plain folder"}).`);

/** @param {string} builder */
async function inContainer(builder) {
  const run = (/** @type {string[]} */ args, input = "") =>
    execFileSync(builder, args, { cwd: ROOT, input, encoding: "utf8", stdio: ["pipe", "pipe", "inherit"] });
  const volumes = ["-v", "gritwright-try-data:/data", "-v", "gritwright-try-keys:/keys"];
  run(["build", "-f", FILE, "-t", "gritwright-try", "."]);
  try {
    run(["run", "--rm", ...volumes, "gritwright-try", "certificate", "/keys", "--name", NAME]);
    run(
      ["run", "--rm", "-i", ...volumes, "gritwright-try", "serve", "--own", "--data", "/data", "--set-password", "owner"],
      `${PASSWORD}\n`,
    );
    run(["run", "--detach", "--name", "gritwright-try", ...volumes, "gritwright-try"]);
    const [, ...check] = healthCheck(readFileSync(FILE, "utf8"));
    await until(() => spawnSync(builder, ["exec", "gritwright-try", "node", ...check]).status === 0);
  } finally {
    spawnSync(builder, ["rm", "--force", "gritwright-try"]);
    spawnSync(builder, ["volume", "rm", "gritwright-try-data", "gritwright-try-keys"]);
  }
}

async function inPlainFolder() {
  const own = mkdtempSync(join(tmpdir(), "gritwright-container-"));
  chmodSync(own, 0o755);
  const text = readFileSync(FILE, "utf8");
  const under = (/** @type {string} */ words) =>
    words
      .replace(/(^|[\s"=])(\/(?:out|build|data|keys|usr\/local))(?=[/\s"]|$)/g, `$1${own}$2`)
      .replace("--global", `--global --prefix ${own}/usr/local`);
  const env = { ...process.env, HOME: join(own, "data"), XDG_DATA_HOME: join(own, "data"), npm_config_cache: join(own, "cache") };
  try {
    for (const folder of ["build", "out", "usr/local", "data", "keys"]) mkdirSync(join(own, folder), { recursive: true });
    const files = execFileSync("git", ["ls-files"], { cwd: ROOT, encoding: "utf8" }).trim();
    execFileSync("cp", ["--parents", "--target-directory", join(own, "build"), ...files.split("\n")], { cwd: ROOT });
    for (const step of steps(text).filter((line) => !line.startsWith("mkdir"))) {
      console.log(`RUN ${step}`);
      execFileSync("sh", ["-c", under(step)], { cwd: join(own, "build"), env, stdio: ["ignore", "ignore", "inherit"] });
    }
    const asUser = process.getuid?.() === 0 ? { uid: USER, gid: USER } : {};
    if ("uid" in asUser) for (const folder of ["data", "keys"]) chownSync(join(own, folder), USER, USER);
    const program = join(own, "usr/local/bin/gritwright");
    const run = (/** @type {string[]} */ args, input = "") =>
      execFileSync(program, args, { cwd: own, env, input, ...asUser, stdio: ["pipe", "inherit", "inherit"] });
    run(["certificate", join(own, "keys"), "--name", NAME]);
    run(["serve", "--own", "--data", join(own, "data"), "--set-password", "owner"], `${PASSWORD}\n`);
    const server = spawn(program, JSON.parse(under(jsonAfter(text, "CMD"))), {
      cwd: own,
      env,
      ...asUser,
      stdio: ["ignore", "inherit", "inherit"],
    });
    const ended = new Promise((resolve) => server.on("exit", resolve));
    const [, ...check] = JSON.parse(under(JSON.stringify(healthCheck(text))));
    await until(() => spawnSync(process.execPath, check).status === 0);
    server.kill("SIGTERM");
    if ((await ended) !== 0) throw new Error("It did not end as it should.");
  } finally {
    rmSync(own, { recursive: true, force: true });
  }
}

/** @param {string} text */
function steps(text) {
  return [...text.matchAll(/^RUN (.*)$/gm)].map(([, line]) => line);
}

/** @param {string} text @param {string} word */
function jsonAfter(text, word) {
  return new RegExp(`^${word} (\\[.*\\])$`, "m").exec(text)?.[1] ?? "[]";
}

/** @param {string} text @returns {string[]} */
function healthCheck(text) {
  return JSON.parse(/^\s+CMD (\[.*\])$/m.exec(text)?.[1] ?? "[]");
}

/** @param {() => boolean} isThere */
async function until(isThere) {
  for (const end = performance.now() + MINUTE; performance.now() < end; await sleep(500)) if (isThere()) return;
  throw new Error("The server was not well within a minute.");
}
