import type { Fields } from "../things/definition.ts";

/** Fields of version 1 that hold free text of several lines; every other text was meant to be one line. */
const LONG = new Set(["complaint", "findings", "note", "notes", "discountWhy"]);
/** Marks, embeddings, overrides and isolates of the Unicode Bidirectional Algorithm (UAX #9, section 2). */
const TURNS = /[\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]/g;
// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what goes
const BREAKS = /[\u0000-\u001f\u007f-\u009f\u2028\u2029]+/g;
/** Where nothing was left. */
const NOTHING_LEFT = "?";

/** Version 2: names and other short texts stand on one line and do not turn the direction of writing. Version 1 took line breaks and such signs. */
export function onOneLine(body: Fields): Fields {
  return cleaned(body, "") as Fields;
}

function cleaned(value: unknown, field: string): unknown {
  if (typeof value === "string") return LONG.has(field) ? value : lineOf(value);
  if (Array.isArray(value)) return value.map((item) => cleaned(item, field));
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, inside]) => [key, cleaned(inside, key)]));
}

function lineOf(text: string): string {
  const line = text.replace(TURNS, "").replace(BREAKS, " ");
  if (line === text) return text;
  return line.trim() === "" ? NOTHING_LEFT : line.trim();
}
