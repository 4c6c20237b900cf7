import { type Described, textsIn } from "#contract/records/described";

/** Shortest end of a serial or telephone number that is looked for. */
const SHORTEST_END = 4;

/** Words of a name without case and accents: `Ána-Lena` is `ana` and `lena`. */
export function wordsOf(text: string): string[] {
  return plain(text)
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== "");
}

/** A serial without spaces, dashes and case. */
export function serialOf(text: string): string {
  return plain(text).replace(/[^\p{L}\p{N}]/gu, "");
}

/** The digits of a telephone number, without the zeros or the plus that it begins with. */
export function digitsOf(text: string): string {
  return text.replace(/\D/g, "").replace(/^0+/, "");
}

/** A serial or number and its ends: people read out the last digits. */
export function withEnds(text: string): string[] {
  const ends = Array.from({ length: Math.max(0, text.length - SHORTEST_END) }, (_, start) => text.slice(start + 1));
  return text === "" ? [] : [text, ...ends];
}

/** Words that a thing is found by, as its description says. */
export function termsIn(described: Described, thing: object): string[] {
  return textsIn(described, thing).flatMap(({ found, text }) => {
    if (found === "words") return wordsOf(text);
    if (found === "number") return withEnds(digitsOf(text));
    return found === "serial" ? withEnds(serialOf(text)) : [];
  });
}

function plain(text: string): string {
  return text.normalize("NFKD").replace(/\p{M}/gu, "").toLowerCase();
}
