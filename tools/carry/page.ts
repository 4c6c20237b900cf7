import { type CarryTable, ENTRY_AXIS, OFFSET_AXIS, type Provenance } from "#engine/pins/carryGrid";
import { leaveText } from "#engine/pins/leave";
import { COEFFICIENT_NAMES, COEFFICIENTS, type Coefficients } from "./coefficients.ts";
import { QUALITIES } from "./design.ts";
import { CARRY_FACTS, type CarryFact, deviation, UNSAID, UNSAID_NAMES } from "./facts.ts";
import { mean, predictionsOf } from "./fit.ts";
import type { Fit } from "./fitStore.ts";
import { pocketChances } from "./qualities.ts";

export interface PageParts {
  readonly fit: Fit;
  readonly table: CarryTable;
  readonly provenance: Provenance;
  readonly members: readonly Coefficients[];
}

/** docs/model/carry-fit.md: every fact with what is published and predicted, the coefficients with their ranges, and the table read in a few places. */
export function fitPage({ fit, table, provenance, members }: PageParts): string {
  const predictions = fit.candidates.map((candidate) => predictionsOf(fit.networks, candidate));
  const factRows = (use: CarryFact["use"]) =>
    CARRY_FACTS.flatMap((fact, i) => {
      if (fact.use !== use) return [];
      const values = predictions.map((of) => of[i]);
      const middle = mean(values);
      return `| ${fact.says} | ${fact.published.toPrecision(3)} | ${middle.toPrecision(3)} (${interval(values)}) | ${deviation(fact, middle).toFixed(1)} | ${fact.source} |`;
    });
  const heading = ["| fact | published | predicted (90 %) | deviation, sd | source |", "|---|---|---|---|---|"];
  return [
    "# Carry: what the fit came to",
    "",
    "*Written by `npm run build:carry`. Do not edit. [carry.md](carry.md) says what all of it means.*",
    "",
    `Engine ${provenance.engine}. Calibration on ${provenance.calibrationRuns} runs; table \`${provenance.design}\` of ${provenance.runs} runs over ${members.length} fitted sets of coefficients, made ${provenance.made}.`,
    `Emulator: log loss of the strike chance on runs it had not seen ${fit.lossUnseen.toFixed(3)}, against ${fit.lossOfMean.toFixed(3)} for the mean alone.`,
    `Walks: ${(100 * fit.accepted).toFixed(0)} % of steps taken, worst ratio of Gelman and Rubin ${fit.worstRatio.toFixed(2)}.`,
    "",
    "## Facts fitted",
    "",
    ...heading,
    ...factRows("fitted"),
    "",
    "## Facts kept out, and predicted",
    "",
    ...heading,
    ...factRows("kept out"),
    "",
    "## Coefficients",
    "",
    "| coefficient | range allowed | fitted (90 %) |",
    "|---|---|---|",
    ...COEFFICIENT_NAMES.map((name) =>
      rangeRow(
        COEFFICIENTS[name],
        fit.candidates.map(({ coefficients }) => coefficients[name]),
      ),
    ),
    "",
    "## What the published figures leave unsaid",
    "",
    "| quantity | range allowed | fitted (90 %) |",
    "|---|---|---|",
    ...UNSAID_NAMES.map((name) =>
      rangeRow(
        UNSAID[name],
        fit.candidates.map(({ unsaid }) => unsaid[name]),
      ),
    ),
    "",
    "## Speed, slip, spin and weight",
    "",
    "Change of the strike chance over the pocket (1.75–3.75 in, 3–6°), in points, when one quality of the hit goes from the low to the high end and the others stay typical. The table carries the log odds of the first, second and last as slopes:",
    "",
    "| quality | from | to | change (90 % over the coefficients) |",
    "|---|---|---|---|",
    ...qualityRows(fit),
    "",
    "## The table, read",
    "",
    "Strike chance in 100 by offset from the middle (in, in the pins' plane) and entry angle:",
    "",
    ...strikeRows(table),
    "",
    `Leaves kept one by one, commonest on the bowler's own side first: ${table.leaves.map(leaveText).join(", ")}.`,
    "",
  ].join("\n");
}

function interval(values: readonly number[]): string {
  const sorted = values.toSorted((a, b) => a - b);
  return [0.05, 0.95].map((q) => sorted[Math.floor(q * (sorted.length - 1))].toPrecision(3)).join("–");
}

function rangeRow({ low, high, meaning }: { low: number; high: number; meaning: string }, values: readonly number[]): string {
  return `| ${meaning} | ${low}–${high} | ${mean(values).toPrecision(2)} (${interval(values)}) |`;
}

function qualityRows({ networks, candidates }: Fit): readonly string[] {
  const names = ["speedMph", "slip", "verticalSpin", "massLb"] as const;
  return names.map((name) => {
    const [low, high] = QUALITIES[name];
    const [least, most] = [low, high].map((value) => pocketChances(networks, candidates, name, value));
    const changes = least.map((chance, i) => 100 * (most[i] - chance));
    return `| ${QUALITY_WORDS[name]} | ${low} | ${high} | ${mean(changes).toFixed(1)} (${interval(changes)}) |`;
  });
}

const QUALITY_WORDS = {
  speedMph: "speed at the pins, mph",
  slip: "slip left, m/s",
  verticalSpin: "spin about the vertical, rad/s",
  massLb: "weight of the ball, lb",
} as const;

function strikeRows({ strike }: CarryTable): readonly string[] {
  const entries = Array.from({ length: ENTRY_AXIS.count }, (_, j) => j).filter((j) => j % 2 === 0);
  const rows = Array.from({ length: OFFSET_AXIS.count }, (_, i) => i).filter((i) => i % 2 === 0);
  return [
    `| in | ${entries.map((j) => `${ENTRY_AXIS.from + j * ENTRY_AXIS.step}°`).join(" | ")} |`,
    `|---|${entries.map(() => "---|").join("")}`,
    ...rows.map((i) => {
      const cells = entries.map((j) => (100 * strike[i * ENTRY_AXIS.count + j]).toFixed(0));
      return `| ${(OFFSET_AXIS.from + i * OFFSET_AXIS.step).toFixed(1)} | ${cells.join(" | ")} |`;
    }),
  ];
}
