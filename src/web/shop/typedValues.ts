import { LANGUAGE } from "#words/figures";

/** A line as it is kept: null where nothing was written. */
export function textOrNull(typed: string): string | null {
  const text = typed.trim();
  return text === "" ? null : text;
}

/** One of the words that may be chosen; null where none was. */
export function wordOrNull<Word extends string>(typed: string): Word | null {
  return typed === "" ? null : (typed as Word);
}

/**
 * A figure as it is kept, with a decimal comma or point; null where nothing was written. What is no figure goes out as it was typed: the shop refuses it
 * and says what is allowed, beside the field.
 */
export function figureOrNull(typed: string): number | null {
  const text = typed.trim().replace(",", ".").replace("−", "-");
  if (text === "") return null;
  const value = Number(text);
  return Number.isFinite(value) ? value : (typed as unknown as number);
}

/** As many digits as anybody types; what is reckoned has noise in the last of its sixteen. */
const DIGITS = 12;

/** Something that is kept, as it stands in a field; empty where nobody knows. */
export function typedOf(value: string | number | null | undefined): string {
  if (typeof value === "number") return String(Number(value.toPrecision(DIGITS)));
  return value ?? "";
}

/** An amount as it is typed, `12`, `12.5` or `12,50`, in cents; null where it is none, or not above nought. */
export function centsOf(typed: string): number | null {
  const written = /^\s*(\d{1,7})(?:[.,](\d{1,2}))?\s*$/.exec(typed);
  if (written === null) return null;
  const cents = 100 * Number(written[1]) + Number((written[2] ?? "").padEnd(2, "0"));
  return cents > 0 ? cents : null;
}

const FIGURE = new Intl.NumberFormat(LANGUAGE, { maximumFractionDigits: 4, useGrouping: false });

/** A figure with as many decimals as it has, up to four, as the reader's language writes it, with a true minus. */
export function figureText(value: number): string {
  return FIGURE.format(value).replace("-", "−");
}
