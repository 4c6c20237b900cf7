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

export const MEASURED_SENTENCES: Readonly<Record<string, string>> = {
  notZip: "This is no X3P file: it is not a ZIP archive.",
  damaged: "The archive is damaged or cut short.",
  tooManyEntries: "The archive holds more entries than any X3P file.",
  tooLarge: "The file is larger, or unpacks to more, than is read.",
  noMainXml: "The archive holds no main.xml.",
  xml: "main.xml cannot be read.",
  doctype: "main.xml declares document types or entities, which no X3P file needs.",
  checksum: "A checksum does not fit: the file was changed or damaged.",
  layers: "The file holds several layers.",
  size: "The number of points is not what the file says.",
  axis: "An axis is not described in a way that can be read.",
  uneven: "The points are not evenly spaced.",
  notANumber: "A height is no number.",
  height: "A height is larger than a surface can have.",
  columns: "The columns are not where they should be.",
  unit: "A unit is not known.",
  records: "The file does not have the four records of ISO 5436-2.",
  noPoints: "There are no measured points in the file.",
  kind: "The kind of file is not known.",
};

function whole(count: number): string {
  return count.toLocaleString("en-US");
}

/** What is wrong with an input, beside the field. The field's path and what is allowed stand in the sentence. */
export const PROBLEM_SENTENCES = {
  notAllowed: ({ value, allowed }) => `${value} is not allowed here. Allowed: ${allowed}.`,
  missing: ({ allowed }) => `is missing. Allowed: ${allowed}.`,
  unknownKey: ({ params, allowed }) => `is not a key here${orMeant(params)} Known keys: ${allowed}.`,
  wrongVersion: ({ value, params }) => `version ${value} of the file is not known; this program reads version ${params.number("version")}.`,
  notKnown: ({ value, params, allowed }) => `${value} is not known${orMeant(params)} Allowed: ${allowed}.`,
  wordFillsNothing: ({ value }) => `the numbers are there already, so the word ${value} has nothing to say. Give the numbers or the word.`,
  onlyOneOf: ({ allowed }) => `needs ${allowed}.`,
  totalDisagrees: ({ params }) =>
    `the sheet states ${params.number("statedMl").toFixed(2)} mL, its passes add up to ${params.number("computedMl").toFixed(2)} mL. One of them is mistyped; correct it, or leave the stated total out.`,
  notForPlan: ({ allowed }) => `a finish plan needs oil on the lane: ${allowed}. Friction given outright is for single shots.`,
  noBestLine: ({ allowed }) => `today's finish has no sensible line on this lane to be found, so one must be given: ${allowed}.`,
  noFile: ({ value }) => `There is no file ${value}.`,
  isFolder: ({ value }) => `${value} is a folder; a file is wanted.`,
  noAccess: ({ value }) => `${value} cannot be read: permission is missing.`,
  notWritten: ({ value, params }) => `${value} cannot be written: ${params.text("detail")}.`,
  tooLarge: ({ params }) => `The file has ${params.number("bytes")} bytes; such a file has at most ${params.number("mostBytes")}.`,
  empty: () => "There is nothing in the file. Our files begin with `gritwright: 1`.",
  notUtf8: () => "The file is not text in UTF-8.",
  workbook: () => "This is a spreadsheet's own file. Open it there, choose Save As, CSV, and take that file.",
  notTable: () => "The file is not text that can be read: it is neither UTF-8 nor UTF-16 nor Windows-1252. Save the table as CSV (UTF-8).",
  emptyTable: () => "There is no table in the file: it wants a heading and at least one row.",
  syntax: ({ params }) => `Line ${params.number("line")}, column ${params.number("column")}: ${params.text("detail")}.`,
  duplicateKey: ({ value, params }) => `Line ${params.number("line")}: the key ${value} stands here a second time.`,
  tooManyAliases: () => "The file repeats itself by aliases (*name) more often than such a file can need.",
  tooDeep: ({ params }) => `It is nested more than ${params.number("levels")} levels deep; nothing that is meant here is.`,
  tooManyKeys: ({ params }) => `has ${whole(params.number("keys"))} keys; at most ${whole(params.number("most"))} are read.`,
  tooManyValues: ({ params }) => `There are more than ${whole(params.number("most"))} values in it; no more are read.`,
  more: ({ params }) => `and ${whole(params.number("count"))} more.`,
  measuredFile: ({ value, allowed, params }) => `${MEASURED_SENTENCES[params.text("what")]} Found: ${value}. Allowed: ${allowed}.`,
  usage: ({ params }) => params.text("detail"),
} as const satisfies Record<string, (told: Told) => string>;
