import { readdirSync, readFileSync } from "node:fs";
import { join, relative } from "node:path";
import { describe, expect, it } from "vitest";
import { COVER_IDS } from "#engine/ball/ball";
import { PAD_NUMBERS } from "#engine/surface/pads";

const SRC = join(import.meta.dirname, "..", "..", "src");

/** Files that may name covers or numbers of pads, and why. Every other asks the registries. */
const MAY_NAME: Readonly<Record<string, string>> = {
  "engine/ball/covers.ts": "the registry of covers",
  "engine/surface/pads.ts": "the registry of pads",
  "engine/surface/abrasives.ts": "the registry of papers, and which abrasive does what",
  "engine/surface/finish.ts": "how a finish is written, by example",
  "engine/surface/grading.ts": "grains of published grading systems",
  "engine/ball/typical.ts": "the typical ball",
  "engine/rules/rulesOfThumb.ts": "the trade's rules, each with the numbers it says and a case",
  "engine/planning/situations.ts": "the trade's situations, that worlds are weighed by",
  "engine/planning/oilInPlay/field.ts": "what a league bowls with",
  "records/demonstration/customers.ts": "an invented shop's balls",
  "records/upgrades/coverNotKnown.ts": "what older versions wrote",
  "words/en/screens.ts": "what a cover is called",
  "web/jobFile/exampleJob.ts": "the example that the form begins with",
};

const COVER = COVER_IDS.join("|");
const NUMBER = PAD_NUMBERS.join("|");
/** What stands for a cover or a number typed by hand, each with a line that it must find. */
const TYPED: Readonly<Record<string, readonly [RegExp, string]>> = {
  "a cover by name": [new RegExp(`["'\`](?:${COVER})["'\`]`, "g"), 'const dull = cover === "urethane";'],
  "a number compared": [/\bnumber\s*(?:[<>]=?|[!=]==)\s*\d{3,4}\b/g, "if (finish.number < 500) return 1;"],
  "a number compared from the left": [/\b\d{3,4}\s*(?:[<>]=?|[!=]==)\s*(?:\w+\.)*number\b/g, "return 1000 >= finish.number;"],
  "a finish as a record": [/\bnumber:\s*\d{3,4}\b/g, "const usual = { number: 2000, polished: false };"],
  "a finish as text": [new RegExp(`["'\`](?:${NUMBER})(?: \\+ polish)?["'\`]`, "g"), 'const usual = "4000 + polish";'],
  "an abrasive by its number": [/["'`](?:pad-|paper-P)\d+["'`]/g, 'bench.cut("paper-P400");'],
  "a ladder": [new RegExp(`\\b(?:${NUMBER})"?,\\s*"?(?:${NUMBER})"?,\\s*"?(?:${NUMBER})\\b`, "g"), "const hand = [500, 1000, 2000];"],
};

const files = readdirSync(SRC, { recursive: true, withFileTypes: true })
  .filter((entry) => entry.isFile() && /\.tsx?$/.test(entry.name))
  .map((entry) => relative(SRC, join(entry.parentPath, entry.name)).replaceAll("\\", "/"));

/** Without what is said in comments. */
function code(path: string): string {
  return readFileSync(join(SRC, path), "utf8")
    .replace(/\/\*[\s\S]*?\*\//g, "")
    .replace(/(^|\s)\/\/.*$/gm, "$1");
}

function found(text: string, pattern: RegExp): readonly string[] {
  return [...text.matchAll(pattern)].map(([match]) => match);
}

describe("covers and numbers of pads are typed in the registries alone", () => {
  it.each(Object.entries(TYPED))("%s", (_, [pattern, line]) => {
    expect(found(line, pattern), "the pattern finds what it is for").not.toEqual([]);
    const elsewhere = files
      .filter((path) => !Object.hasOwn(MAY_NAME, path))
      .flatMap((path) => found(code(path), pattern).map((match) => `src/${path}: ${match}`));
    expect(elsewhere).toEqual([]);
  });

  it.each(Object.keys(MAY_NAME))("%s is there, and does name some", (path) => {
    const named = Object.values(TYPED).flatMap(([pattern]) => found(code(path), pattern));
    expect(named.length + found(code(path), /\b(?:1000|2000|5000|3000)\b/g).length).toBeGreaterThan(0);
  });
});
