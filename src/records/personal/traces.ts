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

/** A text with whole names, numbers and addresses taken out of it, and nothing else. */
export function withoutWhole(text: string, whole: readonly string[]): string {
  return whole.reduce((left, trace) => left.replaceAll(new RegExp(trace.replaceAll(/[\\^$.*+?()[\]{}|]/g, "\\$&"), "giu"), NO_NAME), text);
}
