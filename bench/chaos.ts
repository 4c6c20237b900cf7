/**
 * `npm run chaos -- [--short] [--only WORDS] [--seed N]`: what can go wrong with a shop is done to it, on this machine, over loopback, on both databases; seeded
 * and bounded. Prints one table; a long run puts it into docs/reliability.md, each drill in the place of its last run, with what did not hold. Fails where
 * something acknowledged is lost or doubled, or anything else did not hold.
 */
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { parseArgs } from "node:util";
import { HOW_TO_GET_ONE, testPostgres } from "../test/records/postgres.ts";
import { MACHINE } from "../tools/performancePage.ts";
import { bundleWeb, compile, ROOT } from "../tools/setup.mjs";
import type { Setting } from "./chaos/drill.ts";
import { DRILLS } from "./chaos/drills.ts";
import { type Done, faultsOf, reliabilityPage, table } from "./chaos/report.ts";

const { values } = parseArgs({
  options: { short: { type: "boolean", default: false }, only: { type: "string", default: "" }, seed: { type: "string", default: "1" } },
});
if ((await compile()) !== 0 || (await bundleWeb()) !== 0) throw new Error("The program does not build.");
const postgres = await testPostgres("fsync=on");
if (postgres === null) console.log(`Without PostgreSQL: ${HOW_TO_GET_ONE}`);
const setting: Setting = { seed: Number(values.seed), size: values.short ? "short" : "long", postgres };
const done: Done[] = [];
for (const drill of DRILLS.filter(({ name }) => name.toLowerCase().includes(values.only.toLowerCase()))) {
  const start = performance.now();
  const outcomes = await drill.run(setting);
  done.push({ name: drill.name, outcomes, seconds: (performance.now() - start) / 1000 });
  console.log(`${drill.name}: ${((performance.now() - start) / 1000).toFixed(1)} s`);
}
await postgres?.stop();
console.log(`\n${table(done)}`);
const faults = faultsOf(done);
for (const fault of faults) console.log(`Did not hold: ${fault}`);
if (faults.length > 0) process.exitCode = 1;
// A short run does not take the place of what was measured.
if (!values.short) keep(done);
// What a drill has left open must not keep a finished run from ending.
process.exit();

/** Each drill in the place of its last run. */
function keep(run: readonly Done[]): void {
  const file = join(ROOT, "bench", "chaos", "results.json");
  const before = JSON.parse(readFileSync(file, "utf8")) as readonly Done[];
  const results = DRILLS.flatMap(({ name }) => [...run, ...before].find((one) => one.name === name) ?? []);
  writeFileSync(file, `${JSON.stringify(results, null, 1)}\n`);
  writeFileSync(join(ROOT, "docs", "reliability.md"), reliabilityPage(results, setting.seed, MACHINE));
}
