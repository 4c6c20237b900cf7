import type { Line } from "../delivery/bowler.ts";
import { xToBoard } from "../lane/geometry.ts";
import { emptyRun } from "../motion/averaged.ts";
import type { Thrower } from "../motion/track.ts";
import { type StrikeMap, strikeAt } from "../pins/carry.ts";
import { boardAtPins, entryDegOf, OFF_LANE_BOARD, throwBall } from "./outcomeMap.ts";
import type { MissRoom } from "./plan.ts";

/** Steps and limits of the walk outward from the line: launch deg, boards, mph. */
const WALKS = {
  launchAngleDeg: { step: 0.1, farthest: 3 },
  boards: { step: 0.25, farthest: 8 },
  speedMph: { step: 0.1, farthest: 4 },
} as const;
const BISECTIONS = 5;
const MORE_OFTEN_THAN_NOT = 0.5;

/**
 * How far one thing alone may vary on a line and the mean shot still strikes more often than not: full widths of the stretch around the line.
 * A best line is the middle of what the bowler does, not always a hit itself: then the stretch nearest within one step is meant, else 0.
 */
export function missRoom(thrower: Thrower, carry: StrikeMap, line: Line): MissRoom {
  const run = emptyRun();
  const hit = (launch: number, boards: number, mph: number) => {
    const faster = { ...thrower, bowler: { ...thrower.bowler, speedMph: thrower.bowler.speedMph + mph } };
    throwBall(faster, line.laydownBoard + boards, line.launchAngleDeg + launch, run);
    return xToBoard(run.breakX) >= OFF_LANE_BOARD && strikeAt(carry, boardAtPins(run), entryDegOf(run)) >= MORE_OFTEN_THAN_NOT;
  };
  return {
    launchAngleDeg: width((by) => hit(by, 0, 0), WALKS.launchAngleDeg),
    boards: width((by) => hit(0, by, 0), WALKS.boards),
    speedMph: width((by) => hit(0, 0, by), WALKS.speedMph),
  };
}

function width(hits: (by: number) => boolean, { step, farthest }: { step: number; farthest: number }): number {
  const start = [0, step, -step, 2 * step, -2 * step].find(hits);
  if (start === undefined) return 0;
  return edge(hits, start, step, farthest) - edge(hits, start, -step, farthest);
}

/** Walks from a hit until the first miss, then halves the last step. */
function edge(hits: (by: number) => boolean, start: number, step: number, farthest: number): number {
  let inside = start;
  while (Math.abs(inside - start) < farthest && hits(inside + step)) inside += step;
  let outside = inside + step;
  for (let i = 0; i < BISECTIONS; i++) {
    const middle = (inside + outside) / 2;
    if (hits(middle)) inside = middle;
    else outside = middle;
  }
  return inside;
}
