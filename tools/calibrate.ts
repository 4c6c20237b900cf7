/**
 * Fits the constants that nobody has measured to what the trade and the published bands say, on the named patterns, and writes them with their ranges:
 *
 *   npm run calibrate            some eight minutes on one core; rewrites src/engine/calibrated.ts and docs/model/calibration.md
 *   npm run calibrate -- --check  predicts every target with the constants as they stand and writes nothing
 *
 * Repeatable: seeded, no clock in what is written.
 */
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import type { Assumed } from "#engine/assumptions";
import { CALIBRATED } from "#engine/calibrated";
import { evenPoints, normalDeviate, uniformSource } from "#engine/random";
import { calibrationPage } from "./calibration/page.ts";
import { FREE, type FreeId, fromFree, START } from "./calibration/parameters.ts";
import { TARGETS } from "./calibration/targets.ts";

const SEED = 20261125;
const SCATTERED = 140;
const REFINED = 220;
/** Sets whose loss is at most this above the best fit "nearly as well"; their spread is the range. */
const NEARLY = 1.5;
/** A range is never narrower than this share of the value to either side: the targets are coarse. */
const LEAST_SHARE = 0.06;

export interface Tried {
  readonly free: Readonly<Record<FreeId, number>>;
  readonly loss: number;
}

/** Squares of the misses in units of each target, over those that are fitted, and a weak pull towards the start so that what nothing speaks for stays. */
function lossOf(free: Readonly<Record<FreeId, number>>): number {
  const assumed = fromFree(free);
  const misses = TARGETS.filter((target) => !target.leftOut).reduce(
    (sum, target) => sum + (target.predict(assumed).miss / target.unit) ** 2,
    0,
  );
  const pull = FREE.reduce((sum, { id, low, high }) => sum + ((free[id] - START[id]) / (high - low)) ** 2, 0);
  return misses + 0.5 * pull;
}

function search(): readonly Tried[] {
  const tried: Tried[] = [];
  const attempt = (free: Readonly<Record<FreeId, number>>) => {
    tried.push({ free, loss: lossOf(free) });
    if (tried.length % 20 === 0) console.error(`${tried.length} of ${SCATTERED + REFINED + 1}, best ${bestOf(tried).loss.toFixed(2)}`);
  };
  attempt(START);
  const points = evenPoints(SCATTERED, FREE.length, SEED);
  for (let i = 0; i < SCATTERED; i++) attempt(freeFrom((k) => FREE[k].low + (FREE[k].high - FREE[k].low) * points[i * FREE.length + k]));
  const uniform = uniformSource(SEED + 1);
  for (let i = 0; i < REFINED; i++) {
    const centre = bestOf(tried).free;
    const reach = 0.25 * 0.985 ** i;
    attempt(
      freeFrom((k) =>
        clamp(centre[FREE[k].id] + reach * (FREE[k].high - FREE[k].low) * normalDeviate(uniform()), FREE[k].low, FREE[k].high),
      ),
    );
  }
  return tried;
}

function freeFrom(value: (k: number) => number): Record<FreeId, number> {
  return Object.fromEntries(FREE.map(({ id }, k) => [id, Number(value(k).toPrecision(3))])) as Record<FreeId, number>;
}

function clamp(value: number, low: number, high: number): number {
  return Math.min(high, Math.max(low, value));
}

function bestOf(tried: readonly Tried[]): Tried {
  return tried.reduce((best, one) => (one.loss < best.loss ? one : best));
}

type Ranges = Record<keyof typeof CALIBRATED, { value: number; low: number; high: number }>;

function ranges(tried: readonly Tried[]): Ranges {
  const best = bestOf(tried);
  const near = tried.filter((one) => one.loss <= best.loss + NEARLY).map((one) => fromFree(one.free));
  const values = fromFree(best.free);
  return Object.fromEntries(
    (Object.keys(CALIBRATED) as (keyof typeof CALIBRATED)[]).map((id) => {
      const value = values[id] ?? CALIBRATED[id].value;
      const all = near.map((set) => set[id] ?? value).sort((a, b) => a - b);
      const low = Math.min(all[Math.floor(0.05 * all.length)], value * (1 - LEAST_SHARE));
      const high = Math.max(all[Math.ceil(0.95 * all.length) - 1], value * (1 + LEAST_SHARE));
      return [id, { value, low: Number(low.toPrecision(3)), high: Number(high.toPrecision(3)) }];
    }),
  ) as Ranges;
}

function write(fitted: Ranges): void {
  const rows = Object.entries(fitted).map(([id, { value, low, high }]) => `  "${id}": { value: ${value}, low: ${low}, high: ${high} },`);
  const text = `/**\n * Written by \`npm run calibrate\`; do not edit. Targets, weights and residuals stand in docs/model/calibration.md.\n */\nexport const CALIBRATED = {\n${rows.join("\n")}\n} as const;\n`;
  writeFileSync(join(import.meta.dirname, "../src/engine/calibrated.ts"), text);
}

function predictions(assumed: Partial<Assumed>) {
  return TARGETS.map((target) => ({ target, ...target.predict(assumed) }));
}

if (process.argv.includes("--check")) {
  for (const { target, says, miss } of predictions({}))
    console.log(
      `${target.leftOut ? "kept out " : "fitted   "} ${target.name}: wanted ${target.wanted}, says ${says}, miss ${(miss / target.unit).toFixed(2)}`,
    );
} else {
  const tried = search();
  const fitted = ranges(tried);
  const values = Object.fromEntries(Object.entries(fitted).map(([id, { value }]) => [id, value]));
  write(fitted);
  const page = calibrationPage({
    fitted,
    start: fromFree(START),
    predictions: predictions(values),
    before: predictions(fromFree(START)),
    tried: tried.length,
    best: bestOf(tried).loss,
    seed: SEED,
  });
  writeFileSync(join(import.meta.dirname, "../docs/model/calibration.md"), page);
}
