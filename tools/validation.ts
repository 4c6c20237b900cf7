/**
 * Writes docs/validation.md: every fact with predicted, published and error, the other truth tests by name, and what happens when a term is left out.
 *
 *   npm run validation            some three minutes: it runs the truth tests and leaves out every term
 */
import { execFileSync } from "node:child_process";
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { type Fact, judge, type Verdict } from "../test/truth/fact.ts";
import { FACTS } from "../test/truth/facts.ts";
import { type LeftOut, leaveOutAll } from "./leaveOut/leaveOut.ts";

const ROOT = join(import.meta.dirname, "..");

function factTable(topic: string, verdicts: readonly Verdict[]): string[] {
  return [
    `### ${topic}`,
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

interface Report {
  readonly testResults: readonly {
    readonly assertionResults: readonly { readonly status: string; readonly ancestorTitles: readonly string[]; readonly title: string }[];
  }[];
}

/** The truth tests that are no single figure, as the runner reports them. */
function otherTests(): string[] {
  const file = join(ROOT, "dist/.reports/truth.json");
  execFileSync(
    process.execPath,
    [
      join(ROOT, "node_modules/vitest/vitest.mjs"),
      "run",
      "test/truth",
      "test/planning",
      "--exclude",
      "**/facts.test.ts",
      "--reporter=json",
      `--outputFile=${file}`,
    ],
    { cwd: ROOT, stdio: "ignore" },
  );
  const report: Report = JSON.parse(readFileSync(file, "utf8"));
  const tests = report.testResults.flatMap((one) => one.assertionResults);
  const groups = [...new Set(tests.map((test) => test.ancestorTitles.join(" › ")))];
  return groups.flatMap((group) => [
    `- **${group}**`,
    ...tests.filter((test) => test.ancestorTitles.join(" › ") === group).map((test) => `  - ${test.title}: ${test.status}`),
  ]);
}

function leftOutTable(results: readonly LeftOut[]): string[] {
  return [
    "| term left out | page | tests that turn red | the first of them |",
    "|---|---|---|---|",
    ...results.map(
      ({ term, red }) =>
        `| ${term.name} | [${term.page}](${term.page === "units-and-axes" ? "" : "model/"}${term.page}.md) | ${red.length === 0 ? "**none**" : red.length} | ${(red[0] ?? "").replaceAll("|", "\\|")} |`,
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
  "## Other truth tests",
  "",
  ...otherTests(),
  "",
  "## What if a term were missing",
  "",
  "Each physical term is left out in turn in a copy of the program, and the truth tests are run. A term that could go unnoticed would fail the build (`npm run leave-out`).",
  "",
  ...leftOutTable(leftOut),
  "",
].join("\n");
writeFileSync(join(ROOT, "docs/validation.md"), page);
