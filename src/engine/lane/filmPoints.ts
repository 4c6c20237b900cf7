import { type FilmMap, filmFrom } from "./filmMap.ts";
import type { FilmPoint } from "./lane.ts";

interface Tape {
  readonly ft: number;
  readonly boards: readonly FilmPoint[];
}

/**
 * A film from measured points. Points at one distance form a tape across the lane: straight lines between its boards, the outermost held to the
 * edge. Straight lines between tapes; the first is held back to the foul line, after the last the film falls to nothing at the pattern's end.
 *
 * @param points at least one; boards from the right edge, any order.
 */
export function pointsFilm(points: readonly FilmPoint[], lengthFt: number): FilmMap {
  const tapes = tapesOf(points);
  return filmFrom(lengthFt, (board, ft) => {
    if (ft >= lengthFt) return 0;
    const after = tapes.findIndex((tape) => tape.ft >= ft);
    if (after === 0) return acrossTape(tapes[0], board);
    if (after > 0)
      return between(ft, tapes[after - 1].ft, acrossTape(tapes[after - 1], board), tapes[after].ft, acrossTape(tapes[after], board));
    const last = tapes[tapes.length - 1];
    return between(ft, last.ft, acrossTape(last, board), lengthFt, 0);
  });
}

function tapesOf(points: readonly FilmPoint[]): readonly Tape[] {
  const byFt = new Map<number, FilmPoint[]>();
  for (const point of points) byFt.set(point.ft, [...(byFt.get(point.ft) ?? []), point]);
  return [...byFt].map(([ft, boards]) => ({ ft, boards: boards.toSorted((a, b) => a.board - b.board) })).sort((a, b) => a.ft - b.ft);
}

function acrossTape(tape: Tape, board: number): number {
  const { boards } = tape;
  const after = boards.findIndex((point) => point.board >= board);
  if (after === 0) return boards[0].um;
  if (after < 0) return boards[boards.length - 1].um;
  return between(board, boards[after - 1].board, boards[after - 1].um, boards[after].board, boards[after].um);
}

function between(at: number, from: number, fromValue: number, to: number, toValue: number): number {
  return to > from ? fromValue + ((toValue - fromValue) * (at - from)) / (to - from) : toValue;
}
