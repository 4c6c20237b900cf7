/**
 * Writes docs/validation.md: every fact with predicted, published and error, what else is compared with what, and what happens when a term is left out.
 *
 *   npm run validation            some three minutes: it leaves out every term
 */
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { type Fact, judge, type Verdict } from "../test/truth/fact.ts";
import { FACTS } from "../test/truth/facts.ts";
import { type LeftOut, leaveOutAll } from "./leaveOut/leaveOut.ts";

const ROOT = join(import.meta.dirname, "..");

function factTable(topic: string, verdicts: readonly Verdict[]): string[] {
  return [
    `### ${topic[0].toUpperCase()}${topic.slice(1)}`,
    "",
    "| fact | known | predicted | error | held to | source | mark |",
    "|---|---|---|---|---|---|---|",
    ...verdicts.map(
      ({ fact, predicted, error }) =>
        `| ${fact.says} | ${known(fact)} | ${short(predicted)} | ${typeof fact.known === "number" ? error.toExponential(1) : error === 0 ? "inside" : short(error)} | ${typeof fact.known === "number" ? fact.within : "band"} | ${fact.source} | ${fact.provenance} |`,
    ),
    "",
  ];
}

function known({ known: value, unit }: Fact): string {
  return typeof value === "number" ? `${value} ${unit}` : `${value[0]} – ${value[1]} ${unit}`;
}

function short(value: number): string {
  return String(Number(value.toPrecision(6)));
}

/** What is no single figure: each subject, what it is held against, and the tests that do it. */
const COMPARED: readonly (readonly [subject: string, against: string, tests: string])[] = [
  [
    "full motion",
    "the equations written a second time and given to a general-purpose integrator, on oiled lanes",
    "test/truth/odex.test.ts",
  ],
  ["both motions", "shots integrated to 1e-10 by a second program that shares no code", "test/truth/referenceShots.test.ts"],
  ["each physical term", "closed forms and balances, one by one", "test/truth/terms.test.ts"],
  ["a finish's effect", "rigid-body mechanics: it decides where a ball turns, not how far", "test/truth/physicsOfFinish.test.ts"],
  [
    "pins",
    "rigid impact with friction worked out in the impulse (Keller 1986), moments of a solid of revolution",
    "test/carry/bodies.test.ts",
  ],
  ["carry", "what is published of it; cells simulated anew", "test/carry/table.test.ts"],
  ["finish plan", "the trade's situations and orderings (common practice)", "test/planning/plan.test.ts"],
  [
    "bag",
    "the trade's ladder through a night (common practice); every choice tried out",
    "test/planning/bagPlan.test.ts, bagOptimum.test.ts",
  ],
  ["oil in play", "mass of the oil, and what a league does to it", "test/planning/oilInPlay.test.ts"],
  ["bench work", "the trade's step rules (common practice)", "test/surface"],
  ["delivery", "numbers recovered from shots of which they are known", "test/learning/delivery.test.ts"],
  ["house", "numbers recovered from shots of the full model through the averaged one", "test/learning/house.test.ts"],
  ["complaints", "twenty written cases, answered as a good technician would (common practice)", "test/learning/diagnosis.test.ts"],
];

function leftOutTable(results: readonly LeftOut[]): string[] {
  return [
    "| term left out | page | tests that turn red |",
    "|---|---|---|",
    ...results.map(
      ({ term, red }) =>
        `| ${term.name} | [${term.page}](${term.page === "units-and-axes" ? "" : "model/"}${term.page}.md) | ${red.length === 0 ? "**none**" : red.length} |`,
    ),
  ];
}

const verdicts = FACTS.map(judge);
const topics = [...new Set(FACTS.map((fact) => fact.topic))];
const leftOut = await leaveOutAll("all red", (done, of, name) => console.error(`left out ${done} of ${of}: ${name}`));
const page = [
  "# Validation",
  "",
  "*Written by `npm run validation`. Do not edit.*",
  "",
  "What the program is held against from outside it. *Published*: read in the text of the body or author named, or in a page that reproduces it. *Computed*: from a stated formula, confirmed a",
  "second way. *Memory*: remembered, with the publication it is believed to come from. *Common practice*: the trade's, no source. A fact is a test; its tolerance stands just above what is achieved.",
  "What was fitted to the trade, and what was kept out of the fit and predicted, is in [model/calibration.md](model/calibration.md).",
  "",
  `${verdicts.filter((verdict) => verdict.holds).length} of ${verdicts.length} facts hold.`,
  "",
  "## Facts",
  "",
  ...topics.flatMap((topic) =>
    factTable(
      topic,
      verdicts.filter(({ fact }) => fact.topic === topic),
    ),
  ),
  "## What is no single figure",
  "",
  "| subject | held against | tests |",
  "|---|---|---|",
  ...COMPARED.map((row) => `| ${row.join(" | ")} |`),
  "",
  "## What if a term were missing",
  "",
  "Each physical term is left out in turn in a copy of the program, and the truth tests are run. A term that could go unnoticed would fail the build (`npm run leave-out`).",
  "",
  ...leftOutTable(leftOut),
  "",
].join("\n");
writeFileSync(join(ROOT, "docs/validation.md"), page);
