/**
 * `npm run bench`: seeded, prints medians and spread, and ratios against references measured in the same run; what got worse against the last committed table is
 * said.
 *
 *   npm run bench               everything, some minutes; exit 1 where a ratio is not half as good as it was
 *   npm run bench -- --short    what takes seconds
 *   npm run bench -- --keep     writes bench/ratios.json, the table to be committed
 */
import { writeFileSync } from "node:fs";
import { bringVectorKernel } from "#tasks/kernel/vectorKernel";
import { bagRows } from "./bag.ts";
import { carryRows } from "./carry.ts";
import { compared, KEPT, keptRatios, ratiosOf } from "./kept.ts";
import { motionRows } from "./motion.ts";
import { padWorkRows } from "./padWork.ts";
import { planRows } from "./plan.ts";
import { profileRows } from "./profile.ts";
import { median, type Row } from "./rows.ts";

const isShort = process.argv.includes("--short");
bringVectorKernel();
const short = async () => [...motionRows(), ...(await carryRows()), ...profileRows(), ...padWorkRows()];
const rows: readonly Row[] = isShort ? await short() : [...(await short()), ...(await planRows()), ...(await bagRows())];

for (const { what, value, ratio } of rows) {
  if (ratio === null) console.log(`${what}: ${value}`);
  else {
    const [least, most] = [Math.min(...ratio.rounds), Math.max(...ratio.rounds)].map((one) => one.toFixed(2));
    console.log(`${what}: ${value}, ${median(ratio.rounds).toFixed(2)} (${least}–${most}) × ${ratio.of}`);
  }
}
if (process.argv.includes("--keep")) writeFileSync(KEPT, `${JSON.stringify({ ...keptRatios(), ...ratiosOf(rows) }, null, 2)}\n`);
const { worse, halved } = compared(rows, keptRatios());
for (const line of worse) console.log(`Worse: ${line}`);
if (halved.length > 0) process.exitCode = 1;
for (const line of halved) console.log(`Failed: not half as good as it was: ${line}`);
