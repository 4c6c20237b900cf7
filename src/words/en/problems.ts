import type { Params } from "../params.ts";

/** What a sentence about a problem is made from; the value is already written out. */
interface Told {
  readonly value: string;
  readonly allowed: string;
  readonly params: Params;
}

function orMeant(params: Params): string {
  const nearest = params.optionalText("nearest");
  return nearest === null ? "." : `; did you mean ${nearest}?`;
}

/** What is wrong with an input, beside the field. The field's path and what is allowed stand in the sentence. */
export const PROBLEM_SENTENCES = {
  notAllowed: ({ value, allowed }) => `${value} is not allowed here. Allowed: ${allowed}.`,
  missing: ({ allowed }) => `is missing. Allowed: ${allowed}.`,
  unknownKey: ({ params, allowed }) => `is not a key of the job file here${orMeant(params)} Known keys: ${allowed}.`,
  wrongVersion: ({ value, params }) =>
    `version ${value} of the job file is not known; this program reads version ${params.number("version")}.`,
  notKnown: ({ value, params, allowed }) => `${value} is not known${orMeant(params)} Allowed: ${allowed}.`,
  wordFillsNothing: ({ value }) => `the numbers are there already, so the word ${value} has nothing to say. Give the numbers or the word.`,
  onlyOneOf: ({ allowed }) => `needs ${allowed}.`,
  totalDisagrees: ({ params }) =>
    `the sheet states ${params.number("statedMl").toFixed(2)} mL, its passes add up to ${params.number("computedMl").toFixed(2)} mL. One of them is mistyped; correct it, or leave the stated total out.`,
  notForPlan: ({ allowed }) => `a finish plan needs oil on the lane: ${allowed}. Friction given outright is for single shots.`,
  noBestLine: ({ allowed }) => `today's finish has no sensible line on this lane to be found, so one must be given: ${allowed}.`,
  noFile: ({ value }) => `There is no file ${value}.`,
  isFolder: ({ value }) => `${value} is a folder; a job file is wanted.`,
  noAccess: ({ value }) => `${value} cannot be read: permission is missing.`,
  notWritten: ({ value, params }) => `${value} cannot be written: ${params.text("detail")}.`,
  tooLarge: ({ params }) => `The file has ${params.number("bytes")} bytes; a job file has at most ${params.number("mostBytes")}.`,
  empty: () => "There is nothing in the file. A job file begins with `gritwright: 1`.",
  notUtf8: () => "The file is not text in UTF-8. Is it a job file?",
  syntax: ({ params }) => `Line ${params.number("line")}, column ${params.number("column")}: ${params.text("detail")}.`,
  duplicateKey: ({ value, params }) => `Line ${params.number("line")}: the key ${value} stands here a second time.`,
  tooManyAliases: () => "The file repeats itself by aliases (*name) more often than a job file can need.",
  tooDeep: ({ params }) => `The file is nested more than ${params.number("levels")} levels deep; no job file is.`,
  usage: ({ params }) => params.text("detail"),
} as const satisfies Record<string, (told: Told) => string>;
