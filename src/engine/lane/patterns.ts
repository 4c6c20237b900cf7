/** A pattern by name: a smooth film given by its formula, see docs/model/film.md. */
export interface NamedPattern {
  readonly lengthFt: number;
  /** Film of the middle and of the outside at full thickness, µm. */
  readonly middleUm: number;
  readonly outsideUm: number;
  /** Distance of the shoulder from the lane's edge and its width, boards. */
  readonly edgeBoard: number;
  readonly widthBoards: number;
  /** What it is meant to be, by the bands of the governing body's pattern classes. */
  readonly kind: "house" | "challenge" | "sport";
}

/** Patterns of our own. Add one by adding a record; its volume, mean film and ratio are computed, and a test compares them with published bands. */
export const PATTERNS = {
  "house-40": { lengthFt: 40, middleUm: 5.4, outsideUm: 0.25, edgeBoard: 9.5, widthBoards: 1.2, kind: "house" },
  "light-38": { lengthFt: 38, middleUm: 4.05, outsideUm: 0.45, edgeBoard: 9.5, widthBoards: 1.5, kind: "challenge" },
  "medium-41": { lengthFt: 41, middleUm: 5.4, outsideUm: 0.72, edgeBoard: 9.5, widthBoards: 1.5, kind: "challenge" },
  "heavy-44": { lengthFt: 44, middleUm: 5.1, outsideUm: 1.7, edgeBoard: 8.5, widthBoards: 2.5, kind: "sport" },
} as const satisfies Record<string, NamedPattern>;

export type PatternId = keyof typeof PATTERNS;
export const PATTERN_IDS = Object.keys(PATTERNS) as readonly PatternId[];

const FULL_TO_FT = 8;
const TAIL_FT = 0.6;

/** Film of a named pattern, µm, at a board counted from the right edge. */
export function namedFilmUm(pattern: NamedPattern, board: number, ft: number): number {
  const fromEdge = Math.min(board, 40 - board);
  const shoulder = 0.5 * (1 + Math.tanh((fromEdge - pattern.edgeBoard) / pattern.widthBoards));
  const across = pattern.outsideUm + (pattern.middleUm - pattern.outsideUm) * shoulder;
  const end = 0.5 * (1 - Math.tanh((ft - pattern.lengthFt) / TAIL_FT));
  return across * taper(ft, pattern.lengthFt) * end;
}

/** Share of the full film along the lane: all of it to 8 ft, then down in two straight pieces as the machine runs out. */
function taper(ft: number, lengthFt: number): number {
  if (ft < FULL_TO_FT) return 1;
  const z = (ft - FULL_TO_FT) / (lengthFt - FULL_TO_FT);
  if (z < 0.7) return 1 - (z / 0.7) * 0.75;
  return Math.max(0, 0.25 - ((z - 0.7) / 0.3) * 0.17);
}
