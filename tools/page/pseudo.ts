const ACCENTED: Readonly<Record<string, string>> = {
  a: "á",
  e: "é",
  i: "í",
  o: "ó",
  u: "ú",
  y: "ý",
  n: "ñ",
  c: "ç",
  A: "Á",
  E: "É",
  I: "Í",
  O: "Ó",
  U: "Ú",
  S: "Š",
  T: "Ť",
  s: "š",
  t: "ť",
  r: "ř",
  d: "ď",
  l: "ľ",
  m: "ḿ",
  b: "ḃ",
  p: "ṕ",
  h: "ĥ",
  g: "ğ",
  k: "ķ",
  f: "ḟ",
  v: "ṽ",
  w: "ŵ",
  x: "ẋ",
  z: "ž",
  B: "Ḃ",
  C: "Ç",
  D: "Ď",
  F: "Ḟ",
  G: "Ğ",
  H: "Ĥ",
  K: "Ķ",
  L: "Ľ",
  M: "Ḿ",
  N: "Ñ",
  P: "Ṕ",
  R: "Ř",
  V: "Ṽ",
  W: "Ŵ",
  Y: "Ý",
  Z: "Ž",
};

/** Words that are longer than English ones by about this share. */
const LONGER = 1 / 3;

/** A text with an accent on every letter, and longer: with it nothing that stands in a catalogue looks like what does not. */
function pseudoText(text: string): string {
  const accented = text.replace(/[A-Za-z]/g, (letter) => ACCENTED[letter] ?? letter);
  const letters = text.replace(/[^A-Za-z]/g, "").length;
  return accented + "é".repeat(Math.round(letters * LONGER));
}

/** The same piece of a catalogue with every text and every sentence so written. */
export function pseudo<T>(piece: T): T {
  return made(piece) as T;
}

function made(piece: unknown): unknown {
  if (typeof piece === "string") return pseudoText(piece);
  if (typeof piece === "function") return (...given: unknown[]) => made(piece(...given));
  if (Array.isArray(piece)) return piece.map(made);
  if (typeof piece === "object" && piece !== null)
    return Object.fromEntries(Object.entries(piece).map(([key, value]) => [key, made(value)]));
  return piece;
}
