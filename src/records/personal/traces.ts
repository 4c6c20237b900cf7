import type { Bowler } from "#contract/records/bowler";
import { BOWLER_FIELDS } from "#contract/records/bowlerFields";
import { type TypedText, textsIn } from "#contract/records/described";
import { digitsOf, wordsOf } from "../search/terms.ts";

/** What stands in the place of a text that told who somebody was, where there must be one. */
export const NO_NAME = "(erased)";

/** Shorter ones stand in other words by chance. */
const SHORTEST_BEGINNING = 3;
const SHORTEST_NUMBER = 6;
const SHORTEST_WHOLE = 4;

/** What a person is known by. */
export interface Traces {
  /** Whole names, numbers and addresses, as they were written. */
  readonly whole: readonly string[];
  /** Whether a text speaks of the person: by a word of a name, a telephone number, an address. */
  areIn(text: string): boolean;
}

/** What is a bowler's own, and no other's: names, numbers, addresses. */
export function ownTexts(bowler: object): readonly TypedText[] {
  return textsIn(BOWLER_FIELDS, bowler).filter(({ personal }) => personal !== "no");
}

export function tracesOf(bowler: Bowler): Traces {
  const own = ownTexts(bowler);
  const numbers = own.flatMap(({ personal, text }) => (personal === "number" ? [digitsOf(text)] : []));
  const whole = own.flatMap(({ text }) => (text.length >= SHORTEST_WHOLE ? [text] : []));
  const words = [...new Set(own.flatMap(({ personal, text }) => (personal === "name" ? wordsOf(text) : [])))];
  return {
    whole,
    areIn(text) {
      const digits = digitsOf(text);
      return (
        wordsOf(text).some((word) => words.some((name) => (name.length < SHORTEST_BEGINNING ? word === name : word.startsWith(name)))) ||
        numbers.some((number) => number.length >= SHORTEST_NUMBER && digits.includes(number)) ||
        whole.some((trace) => text.toLowerCase().includes(trace.toLowerCase()))
      );
    },
  };
}

/** A text without the person: as it was where it does not speak of them. */
export function withoutPerson(text: string, traces: Traces): string {
  return traces.areIn(text) ? NO_NAME : text;
}

/** A text with whole names, numbers and addresses taken out of it, however they are written, and nothing else. */
export function withoutWhole(text: string, whole: readonly string[]): string {
  return whole.reduce((left, trace) => left.replaceAll(wayOf(trace), NO_NAME), text);
}

/** What may stand between the digits of one number. */
const BETWEEN_DIGITS = "[\\s()./\\-–+]{0,3}";

/** A trace as people write it: numbers with or without signs between the digits, the words of a name apart in any way, the last one first with a comma. */
function wayOf(trace: string): RegExp {
  const plain = (word: string) => word.replaceAll(/[\\^$.*+?()[\]{}|]/g, "\\$&");
  const digits = digitsOf(trace);
  const isNumber = digits.length >= SHORTEST_NUMBER && !/\p{L}|@/u.test(trace);
  // As it was written, and without what a country or a city puts before it.
  if (isNumber) return new RegExp([trace.replaceAll(/\D/g, ""), digits].map((way) => [...way].join(BETWEEN_DIGITS)).join("|"), "gu");
  const words = trace.trim().split(/\s+/).map(plain);
  const inOrder = words.join("\\s+");
  if (words.length < 2) return new RegExp(inOrder, "giu");
  const lastFirst = `${words[words.length - 1]}\\s*,\\s*${words.slice(0, -1).join("\\s+")}`;
  return new RegExp(`${inOrder}|${lastFirst}`, "giu");
}
