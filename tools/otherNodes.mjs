/**
 * The tests of the records and of the server once more on other Nodes: what a shop's data hang on (the database is native code, streams and sockets are
 * Node's own) is to be seen working on each line that may run it. The Nodes come from the npm registry, with the headers that the database is compiled against.
 *
 *   npm run other-nodes
 */
import { execFile } from "node:child_process";
import { cpSync, existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { arch, platform } from "node:os";
import { delimiter, dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { bundleWeb, compile, ensureInstalled, ROOT } from "./setup.mjs";
import { addTotals, failedInVitest, fromVitest, NONE, totalsLine } from "./totals.mjs";

/** The newest of each line when they were last looked at. This machine's own Node runs all tests. */
const VERSIONS = ["22.23.3", "24.22.3"];
/** A Node whose own SQLite is used, as where the native one is neither to be had built nor compiled; and what is tried on it: what holds on to the data. */
const WITHOUT_NATIVE = "24.22.3";
const TESTS_OF_SQLITE = ["durability", "things.test", "backup.test", "badPlaces", "folderGone"].map((name) => `test/records/${name}`);
const PLACE = join(ROOT, ".cache", "nodes");
const COPIED = ["package.json", "vitest.config.ts", "tsconfig.base.json", "src", "test", "tools", "bench", "examples", "docs", "dist"];
const TESTS = ["test/records", "test/server"];
/**
 * Of the same work on every Node, and too long for a build machine three times: what is counted by its engine, invented shops made over and over, who may see
 * what of another shop, what a backup keeps for how long, and what goes through the driver of PostgreSQL, which is no native code.
 */
const LEFT_OUT = [
  "test/server/hostileBodies.test.ts",
  "test/server/otherShop.test.ts",
  "test/server/plans.test.ts",
  "test/server/databaseRestarts.test.ts",
  "test/server/twoServers.test.ts",
  "test/records/demonstration.test.ts",
  "test/records/backupBlobs.test.ts",
  "test/records/backupShared.test.ts",
  "test/records/servers.test.ts",
  "test/records/move.test.ts",
];
/** The long rounds of durability are this machine's own Node's. */
const FEWER = { KILLS: "4", CUTS: "2" };

/** @returns {Promise<import("./totals.mjs").Totals>} of all of them */
export async function testOnOtherNodes() {
  let totals = NONE;
  const others = VERSIONS.filter((one) => majorOf(one) !== majorOf(process.versions.node));
  const all = [...others.map((version) => tested(version, "native")), tested(WITHOUT_NATIVE, "its own")];
  for (const { version, sqlite, own, report, code, said } of await Promise.all(all)) {
    const found = fromVitest(report, code);
    totals = addTotals(totals, found);
    console.log(`Node ${version}, SQLite ${sqlite}: ${totalsLine(found)}`);
    if (found.failed > 0) console.log([said, ...failedInVitest(report, join(own, "tree"))].join("\n"));
    rmSync(own, { recursive: true, force: true });
  }
  return totals;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  await ensureInstalled();
  if ((await compile()) !== 0 || (await bundleWeb()) !== 0) throw new Error("The program does not build.");
  const totals = await testOnOtherNodes();
  process.exitCode = totals.failed === 0 ? 0 : 1;
  console.log(totalsLine(totals));
}

/** @param {string} version */
function majorOf(version) {
  return version.split(".")[0];
}

/** Installs a Node, copies the project, compiles the database for it, and runs the tests. @param {string} version @param {"native" | "its own"} sqlite */
async function tested(version, sqlite) {
  const isNative = sqlite === "native";
  const own = join(PLACE, isNative ? version : `${version}-without-native`);
  const { node, headers } = await installed(version, own);
  const tree = join(own, "tree");
  rmSync(tree, { recursive: true, force: true });
  for (const part of COPIED.filter((name) => existsSync(join(ROOT, name)))) cpSync(join(ROOT, part), join(tree, part), { recursive: true });
  cpSync(join(ROOT, "node_modules"), join(tree, "node_modules"), { recursive: true, verbatimSymlinks: true });
  const others = { COMPILED: "1", LEFT_OUT: LEFT_OUT.join() };
  const env = { PATH: `${dirname(node)}${delimiter}${process.env.PATH ?? ""}`, npm_config_nodedir: headers };
  if (isNative) await ran("npm", ["rebuild", "better-sqlite3"], tree, env);
  else rmSync(join(tree, "node_modules", "better-sqlite3", "build"), { recursive: true });
  const file = join(own, "report.json");
  const args = [
    join(tree, "node_modules", "vitest", "vitest.mjs"),
    "run",
    ...(isNative ? TESTS : TESTS_OF_SQLITE),
    "--maxWorkers=1",
    "--reporter=default",
    "--reporter=json",
  ];
  const { code, said } = await ran(node, [...args, `--outputFile.json=${file}`], tree, { ...env, ...FEWER, ...others }, true);
  return { version, sqlite, own, report: existsSync(file) ? JSON.parse(readFileSync(file, "utf8")) : null, code, said };
}

/** @param {string} version @param {string} own a folder of its own */
async function installed(version, own) {
  const name = `node-${platform() === "win32" ? "win" : platform()}-${arch()}`;
  mkdirSync(own, { recursive: true });
  writeFileSync(join(own, "package.json"), JSON.stringify({ private: true, dependencies: { [name]: version } }));
  await ran("npm", ["install", "--no-audit", "--no-fund", "--no-package-lock"], own, {});
  const headers = join(own, "node_modules", name);
  return { node: join(headers, "bin", platform() === "win32" ? "node.exe" : "node"), headers };
}

/**
 * @param {string} command @param {readonly string[]} args @param {string} cwd @param {Record<string, string>} env
 * @param {boolean} [mayFail]
 * @returns {Promise<{ code: number, said: string }>}
 */
function ran(command, args, cwd, env, mayFail = false) {
  return new Promise((resolve, reject) => {
    const options = { cwd, env: { ...process.env, ...env }, maxBuffer: 64e6, shell: platform() === "win32" };
    execFile(command, args, options, (fault, stdout, stderr) => {
      const said = `${stdout}${stderr}`;
      if (fault !== null && !mayFail) reject(new Error(`${command} ${args.join(" ")}: ${said}`));
      else resolve({ code: fault === null ? 0 : 1, said });
    });
  });
}
