import { z } from "zod";

/*
 * Every check's message is the text of what is *allowed*, in one notation; the sentence round it is made later.
 * So a schema is also the only place where a limit is written.
 */

/** Where a number may lie: above or from, below or up to. */
export interface Range {
  readonly above?: number;
  readonly from?: number;
  readonly below?: number;
  readonly to?: number;
}

/** A number with a unit inside a range, e.g. `0 < x ≤ 40 mph`. */
export function quantity(unit: string, range: Range, description: string) {
  return bounded(z.number, rangeText(range, unit), range).describe(`${description} (${rangeText(range, unit)})`);
}

/** A whole number inside a range. */
export function count(unit: string, range: { readonly from: number; readonly to: number }, description: string) {
  const allowed = `a whole number, ${rangeText(range, unit)}`;
  return bounded(z.int, allowed, range).describe(`${description} (${allowed})`);
}

function bounded(make: typeof z.number | typeof z.int, allowed: string, range: Range) {
  let schema: z.ZodNumber = make({ error: allowed });
  if (range.above !== undefined) schema = schema.gt(range.above, { error: allowed });
  if (range.from !== undefined) schema = schema.gte(range.from, { error: allowed });
  if (range.below !== undefined) schema = schema.lt(range.below, { error: allowed });
  if (range.to !== undefined) schema = schema.lte(range.to, { error: allowed });
  return schema;
}

function rangeText(range: Range, unit: string): string {
  const low = range.above !== undefined ? `${range.above} < ` : range.from !== undefined ? `${range.from} ≤ ` : "";
  const high = range.below !== undefined ? ` < ${range.below}` : range.to !== undefined ? ` ≤ ${range.to}` : "";
  return `${low}x${high}${unit === "" ? "" : ` ${unit}`}`.replaceAll("-", "−");
}

/** One of a list of words. */
export function oneOf<const Words extends readonly [string, ...string[]]>(words: Words, description: string) {
  return z.enum(words, { error: `one of ${words.join(", ")}` }).describe(description);
}

const MOST_LETTERS = 200;

/** PostgreSQL keeps no text with the sign U+0000. */
export function canBeKept(words: string): boolean {
  return !words.includes("\0");
}

/** Control characters, and what breaks a line or turns the direction of writing (UAX #9, section 2): a name with them looks like another one. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is refused
const NOT_ON_A_LINE = /[\u0000-\u001f\u007f-\u009f\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069]/;

/** A line of text that is there: a name, a reason. */
export function text(description: string) {
  const allowed = `text of 1 to ${MOST_LETTERS} letters`;
  return z
    .string({ error: allowed })
    .trim()
    .min(1, { error: allowed })
    .max(MOST_LETTERS, { error: allowed })
    .refine((line) => !NOT_ON_A_LINE.test(line), { error: `${allowed} on one line, without control characters` })
    .describe(description);
}

/** A mapping with exactly these keys. */
export function mapping<Shape extends z.core.$ZodLooseShape>(shape: Shape, description: string) {
  return z.strictObject(shape, { error: (issue) => mappingAllowed(issue, Object.keys(shape)) }).describe(description);
}

function mappingAllowed(issue: { readonly code: string | undefined }, keys: readonly string[]): string {
  return issue.code === "unrecognized_keys" ? keys.join(", ") : `a mapping with the keys ${keys.join(", ")}`;
}

/** Least and most of something: `[9, 36]`. */
export function pair(item: z.ZodNumber, allowed: string, description: string) {
  return z
    .tuple([item, item], { error: allowed })
    .refine(([least, most]) => least <= most, { error: allowed })
    .describe(description);
}
