/** A stretch of oil laid by the machine: one row of an oil sheet. Boards from the lane's right edge, both ends included. */
export interface OilPass {
  readonly direction: "out" | "back";
  readonly fromBoard: number;
  readonly toBoard: number;
  /** How many times this stretch is passed over. */
  readonly times: number;
  readonly perBoardMicrolitres: number;
  readonly fromFt: number;
  readonly toFt: number;
}

export interface OilSheet {
  readonly name: string;
  readonly lengthFt: number;
  readonly passes: readonly OilPass[];
  /** What the sheet itself states; compared with what its passes add up to. */
  readonly stated: { readonly totalMl: number | null; readonly ratio: number | null };
}

/** Measured film thickness. Boards from the lane's right edge. */
export interface FilmPoint {
  readonly board: number;
  readonly ft: number;
  readonly um: number;
}

export type PatternSource =
  | { readonly kind: "named"; readonly id: string }
  | { readonly kind: "oilSheet"; readonly sheet: OilSheet }
  | { readonly kind: "filmPoints"; readonly name: string; readonly lengthFt: number; readonly points: readonly FilmPoint[] };

export interface Lane {
  readonly pattern: PatternSource;
  /** Shots already thrown on it by this bowler along the bowler's own line. */
  readonly playedShots: number;
}

/** Friction given outright, for mechanics alone. */
export type GivenFriction =
  | { readonly kind: "constant"; readonly mu: number }
  | { readonly kind: "twoZone"; readonly oil: number; readonly dry: number; readonly changeAtFt: number; readonly widthFt: number };
