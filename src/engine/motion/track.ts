import type { FrictionField } from "../contact/friction.ts";
import type { Bowler, Line } from "../delivery/bowler.ts";
import { release } from "../delivery/release.ts";
import { CELL_Y, type FilmMap, ROWS } from "../lane/filmMap.ts";
import { BOARD, HEAD_PIN } from "../lane/geometry.ts";
import { type Track, type WearLaw, wornFilm } from "../lane/wear.ts";
import { DEGREE } from "../units.ts";
import { type AveragedBall, emptyRun, runAveraged, TRACE_WIDTH, type Trace } from "./averaged.ts";

/** One bowler with one ball on one film. */
export interface Thrower {
  readonly bowler: Bowler;
  readonly ball: AveragedBall;
  readonly friction: FrictionField;
}

const ALONE = { share: 1, sdLaunchDeg: 0, sdLaydownBoards: 0 };

/**
 * Where a bowler's shots on a line roll: the mean shot's path at every row of the film map, and how far the others scatter about it:
 * laydown alike everywhere, launch angle growing with distance.
 *
 * @param among several that are played: its share of the shots, and how the lines that it stands for scatter about it
 */
export function trackOf(thrower: Thrower, line: Line, among = ALONE): Track {
  const trace: Trace = [];
  runAveraged(thrower.ball, thrower.friction, release(thrower.bowler, line), 0, emptyRun(), trace, HEAD_PIN);
  const x = new Float64Array(ROWS);
  const scatter = new Float64Array(ROWS);
  const { spread } = thrower.bowler;
  const laydownBoards = Math.hypot(spread.laydownBoards, among.sdLaydownBoards);
  const launchAngleDeg = Math.hypot(spread.launchAngleDeg, among.sdLaunchDeg);
  const standing = laydownBoards * BOARD;
  let at = 0;
  for (let row = 0; row < ROWS; row++) {
    const y = row * CELL_Y;
    while (at + 2 * TRACE_WIDTH < trace.length && trace[at + TRACE_WIDTH] < y) at += TRACE_WIDTH;
    const next = Math.min(at + TRACE_WIDTH, trace.length - TRACE_WIDTH);
    const span = trace[next] - trace[at];
    const share = span > 0 ? Math.min(1, Math.max(0, (y - trace[at]) / span)) : 0;
    x[row] = trace[at + 1] + (trace[next + 1] - trace[at + 1]) * share;
    const across = launchAngleDeg * DEGREE * y;
    scatter[row] = Math.sqrt(standing * standing + across * across);
  }
  return { x, scatter, share: among.share };
}

/** The film after so many shots of one thrower along one line. */
export function filmPlayed(film: FilmMap, thrower: Thrower, line: Line, shots: number, law: WearLaw): FilmMap {
  return wornFilm(film, [trackOf(thrower, line)], shots, law).film;
}
