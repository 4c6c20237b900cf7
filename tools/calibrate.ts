/**
 * Weighs complete worlds by what is known, and writes the ensemble that every plan draws from:
 *
 *   npm run calibrate             some fifteen minutes on two cores; rewrites src/engine/worlds/ensembleData.ts, src/engine/calibrated.ts,
 *                                 tools/calibration/said.json and docs/model/calibration.md
 *   npm run calibrate -- --page   the page alone, from what is stored
 *
 * Repeatable: seeded, no clock in what is written.
 */
import { execFileSync } from "node:child_process";
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fromBase64, toBase64 } from "#engine/bytes";
import { CARRY } from "#engine/pins/carryData";
import { SITUATIONS } from "#engine/planning/situations";
import { evenPoints } from "#engine/random";
import { effectiveNumber } from "#engine/worlds/effectiveNumber";
import { digestOf, ENSEMBLE_VERSION, ensemble, packUnits } from "#engine/worlds/ensemble";
import { PARAMETER_IDS, worldAt } from "#engine/worlds/parameters";
import { weightedMean } from "#engine/worlds/weightedMean";
import { askAll } from "./calibration/askAll.ts";
import { herded, resampled } from "./calibration/choose.ts";
import { calibratedSource, frictionOf, nearestTo } from "./calibration/middleWorld.ts";
import { AskedWorld } from "./calibration/model.ts";
import { calibrationPage, type Stored } from "./calibration/page.ts";
import type { Said } from "./calibration/pointWorker.ts";

const SEED = 20261130;
const TRIED = 2000;
/** Drawn into the ensemble; worlds that come twice count twice. */
const DRAWN = 320;
/** This share of them comes from the priors as they are, so that what was fitted is not believed too much. */
const UNFITTED = 0.2;

/** So many of the first worlds are made truths of another contact law: everything else of theirs, but asperities let go exponentially. */
const OTHER_LAW = 30;
const OTHER_SHAPE = { "friction.exponentialShare": 1 } as const;
/** So many of the worlds' friction laws are tried for the one in the middle. */
const MIDDLE_TRIED = 40;

const ROOT = join(import.meta.dirname, "..");
const SAID = join(ROOT, "tools/calibration/said.json");

if (process.argv.includes("--page")) {
  const stored = JSON.parse(readFileSync(SAID, "utf8")) as Stored;
  writeFileSync(join(ROOT, "docs/model/calibration.md"), calibrationPage(stored, ensemble()));
} else {
  await remake();
  // What has just been written is read by a program that begins anew.
  execFileSync(process.execPath, [...process.execArgv, import.meta.filename, "--page"], { stdio: "inherit" });
}

async function remake(): Promise<void> {
  const points = evenPoints(TRIED, PARAMETER_IDS.length, SEED);
  const units = Array.from({ length: TRIED }, (_, i) => storedUnit(points.slice(i * PARAMETER_IDS.length, (i + 1) * PARAMETER_IDS.length)));
  const first = await askAll(
    units.map((unit, id) => ({ id, assumed: worldAt(unit), what: "fitted" as const, lines: [] })),
    told("weighed", TRIED),
  );
  const losses = first.map(({ loss }) => loss);
  const least = Math.min(...losses);
  const weights = losses.map((loss) => Math.exp(-0.5 * (loss - least)));
  const posterior = resampled(
    weights.map((weight, place) => ({ place, weight })),
    Math.round(DRAWN * (1 - UNFITTED)),
    SEED,
  );
  const prior = resampled(
    weights.map((_, place) => ({ place, weight: 1 })),
    Math.round(DRAWN * UNFITTED),
    SEED + 1,
  );
  const shares = new Map<number, number>();
  for (const { place, weight } of posterior) shares.set(place, (1 - UNFITTED) * weight);
  for (const { place, weight } of prior) shares.set(place, (shares.get(place) ?? 0) + UNFITTED * weight);
  const places = [...shares.keys()].sort((a, b) => a - b);
  const middle = new AskedWorld({});
  const lines = SITUATIONS.map((situation) => middle.lineOf(situation));
  const all = await askAll(
    places.map((place) => ({ id: place, assumed: worldAt(units[place]), what: "all" as const, lines })),
    told("asked in full", places.length),
  );
  const order = herded(
    places.map((place) => shares.get(place) ?? 0),
    all.map(({ ladders }) => ladders.flat()),
  );
  const chosen = order.map((i) => ({
    said: all[i],
    unit: units[places[i]],
    weight: Number((DRAWN * (shares.get(places[i]) ?? 0)).toFixed(6)),
    likeliness: Number(((TRIED * weights[places[i]]) / sumOf(weights)).toPrecision(4)),
  }));
  const bytes = packUnits(chosen.map(({ unit }) => unit));
  const kept = chosen.map(({ weight }) => weight);
  const likeliness = chosen.map((one) => one.likeliness);
  writeFileSync(join(ROOT, "src/engine/worlds/ensembleData.ts"), ensembleSource(bytes, kept, likeliness));
  const other = await askAll(
    chosen.slice(0, OTHER_LAW).map(({ unit }, id) => ({ id, assumed: { ...worldAt(unit), ...OTHER_SHAPE }, what: "all" as const, lines })),
    told("truths of another contact law", OTHER_LAW),
  );
  const found: Stored = {
    digest: digestOf(bytes, [...kept, ...likeliness, UNFITTED]),
    seed: SEED,
    tried: TRIED,
    drawn: DRAWN,
    unfitted: UNFITTED,
    effectiveOfTried: effectiveNumber(weights),
    leastLoss: least,
    places: order.map((i) => places[i]),
    said: chosen.map(({ said }) => said.said.map(rounded)),
    lines,
    ...asStored(chosen.map(({ said }) => said)),
    otherLaw: asStored(other),
  };
  writeFileSync(SAID, `${JSON.stringify(found)}\n`);
  await writeMiddle(
    found,
    chosen.map(({ unit }) => unit),
    kept,
  );
  console.error(`effective ${found.effectiveOfTried.toFixed(0)} of ${TRIED}; ${chosen.length} worlds kept, least loss ${least.toFixed(2)}`);
}

/** The friction law in the middle, of those of the first worlds. */
async function writeMiddle({ ladders }: Stored, units: readonly (readonly number[])[], weights: readonly number[]): Promise<void> {
  const mean = ladders[0].flat().map((_, k) =>
    weightedMean(
      ladders.map((row) => row.flat()[k]),
      weights,
    ),
  );
  const middle = PARAMETER_IDS.map((_, i) =>
    weightedMean(
      units.map((unit) => unit[i]),
      weights,
    ),
  );
  const tried = units.slice(0, MIDDLE_TRIED);
  const laws = tried.map(frictionOf);
  const heard = await askAll(
    laws.map((assumed, id) => ({ id, assumed, what: "all" as const, lines: [] })),
    told("laws asked for the middle", laws.length),
  );
  const best = nearestTo(
    mean,
    middle,
    heard.map(({ ladders: own }, i) => ({ ladder: own.flat(), unit: tried[i] })),
  );
  writeFileSync(join(ROOT, "src/engine/calibrated.ts"), calibratedSource(laws[best], units, weights));
}

/** As the engine reads it back: 16 bits a number. */
function storedUnit(unit: Float64Array): number[] {
  const bytes = fromBase64(toBase64(packUnits([unit])));
  return Array.from(unit, (_, i) => ((bytes[2 * i] << 8) | bytes[2 * i + 1]) / 65535);
}

/** What worlds said of the situations, to four places and two. */
function asStored(said: readonly Said[]): Pick<Stored, "ladders" | "shots"> {
  const rows = (of: readonly (readonly number[])[], places: number) => of.map((row) => row.map((value) => Number(value.toFixed(places))));
  return { ladders: said.map(({ ladders }) => rows(ladders, 4)), shots: said.map(({ shots }) => rows(shots, 2)) };
}

function rounded(value: number | null): number | null {
  return value === null ? null : Number(value.toPrecision(5));
}

function told(what: string, of: number) {
  return (done: number) => {
    if (done % 50 === 0 || done === of) console.error(`${what}: ${done} of ${of}`);
  };
}

function sumOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0);
}

function ensembleSource(bytes: Uint8Array, weights: readonly number[], likeliness: readonly number[]): string {
  const text = readFileSync(join(ROOT, "src/engine/worlds/ensembleData.ts"), "utf8");
  const head = text.slice(0, text.indexOf("export const ENSEMBLE_DATA"));
  const lines = [
    "export const ENSEMBLE_DATA: EnsembleData = {",
    `  version: ${ENSEMBLE_VERSION},`,
    `  digest: "${digestOf(bytes, [...weights, ...likeliness, UNFITTED])}",`,
    `  carry: "${CARRY.provenance.design}",`,
    `  parameters: [\n${PARAMETER_IDS.map((id) => `    "${id}",`).join("\n")}\n  ],`,
    `  weights: [\n    ${weights.join(", ")},\n  ],`,
    `  likeliness: [\n    ${likeliness.join(", ")},\n  ],`,
    `  unfitted: ${UNFITTED},`,
    `  units:\n    "${toBase64(bytes)}",`,
    "};",
  ];
  return `${head}${lines.join("\n")}\n`;
}
