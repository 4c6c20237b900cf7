import type { Hand } from "../../delivery/bowler.ts";
import { handed } from "../../lane/film.ts";
import { CELL_ML_PER_UM, COLUMNS, columnBoard, columnShare, type FilmMap, ROWS, rowFt, rowShare } from "../../lane/filmMap.ts";

/** What play has done to a lane, against the lane as laid, seen from one hand's side. */
export interface FilmChange {
  /** Share of the film left in each part of the lane, by where along it and how far from the hand's edge; above 1 where oil was carried in. */
  readonly left: readonly {
    readonly along: "front" | "middle" | "back";
    readonly boards: readonly [number, number];
    readonly share: number | null;
  }[];
  /** The board of the hand's own half whose film between 15 ft and the pattern's end is most used up: the burn. */
  readonly burn: { readonly board: number; readonly share: number };
  /** Oil beyond the end of the pattern more than was laid there, mL: carried down. */
  readonly carriedDownMl: number;
}

const ALONG = ["front", "middle", "back"] as const;
/** Boards from the hand's side: outside the second arrow, about it, and the middle. */
const BANDS: readonly (readonly [number, number])[] = [
  [1, 8],
  [9, 14],
  [15, 24],
];
/** The front part, where the film is thickest and everybody's lines lie close together. */
const FRONT_TO_FT = 15;
/** Less film than this was never there: no share is told, µm. */
const LEAST_UM = 0.05;

export function filmChange(laid: FilmMap, now: FilmMap, hand: Hand): FilmChange {
  const [before, after] = [handed(laid, hand), handed(now, hand)];
  const end = laid.lengthFt;
  const part = (ft: number) => (ft < FRONT_TO_FT ? "front" : ft <= end ? "middle" : "back");
  const left = ALONG.flatMap((along) =>
    BANDS.map((boards) => ({ along, boards, share: shareLeft(before, after, (ft) => part(ft) === along, boards) })),
  );
  let burn = { board: 1, share: 1 };
  for (let board = 1; board <= 20; board++) {
    const share = shareLeft(before, after, (ft) => part(ft) === "middle", [board, board]);
    if (share !== null && share < burn.share) burn = { board, share };
  }
  return { left, burn, carriedDownMl: beyond(after, end) - beyond(before, end) };
}

/** Film after over film before, over a part of the lane. Negative boards do not occur; the ends are included. */
function shareLeft(before: FilmMap, after: FilmMap, along: (ft: number) => boolean, [from, to]: readonly [number, number]): number | null {
  let laid = 0;
  let now = 0;
  let cells = 0;
  for (let row = 0; row < ROWS; row++) {
    if (!along(rowFt(row))) continue;
    for (let column = 0; column < COLUMNS; column++) {
      const board = columnBoard(column);
      if (board < from || board > to) continue;
      laid += before.um[row * COLUMNS + column];
      now += after.um[row * COLUMNS + column];
      cells++;
    }
  }
  return cells === 0 || laid / cells < LEAST_UM ? null : now / laid;
}

function beyond(film: FilmMap, endFt: number): number {
  let sum = 0;
  for (let row = 0; row < ROWS; row++) {
    if (rowFt(row) <= endFt) continue;
    for (let column = 0; column < COLUMNS; column++) sum += film.um[row * COLUMNS + column] * rowShare(row) * columnShare(column);
  }
  return sum * CELL_ML_PER_UM;
}
