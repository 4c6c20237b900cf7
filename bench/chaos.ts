/**
 * `npm run chaos -- [--short] [--only WORDS] [--seed N]`: what can go wrong with a shop is done to it, on this machine, over loopback, on both databases; seeded
 * and bounded. Prints one table; the long run writes docs/reliability.md. Fails where something acknowledged is lost or doubled, or anything else did not hold.
 */
import { writeFileSync } from "node:fs";
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
// A part of it, or a short run, does not take the place of what was measured.
else if (!values.short && values.only === "")
  writeFileSync(join(ROOT, "docs", "reliability.md"), reliabilityPage(done, setting.seed, MACHINE));
// What a drill has left open must not keep a finished run from ending.
process.exit();
