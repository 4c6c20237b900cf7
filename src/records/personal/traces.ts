import type { Bowler } from "#contract/records/bowler";
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

export function tracesOf({ name, phone, email, address, guardian }: Bowler): Traces {
  const names = [name, guardian?.name ?? ""];
  const numbers = [phone, guardian?.phone ?? null].flatMap((number) => (number === null ? [] : [digitsOf(number)]));
  const whole = [...names, phone, email, address, guardian?.phone ?? null].filter(
    (text): text is string => text !== null && text.length >= SHORTEST_WHOLE,
  );
  const words = [...new Set(names.flatMap(wordsOf))];
  return {
    whole,
    areIn(text) {
      const digits = digitsOf(text);
      return (
        wordsOf(text).some((word) => words.some((own) => (own.length < SHORTEST_BEGINNING ? word === own : word.startsWith(own)))) ||
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
