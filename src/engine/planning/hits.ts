import type { Line } from "../delivery/bowler.ts";
import { xToBoard } from "../lane/geometry.ts";
import { emptyRun } from "../motion/averaged.ts";
import type { Thrower } from "../motion/track.ts";
import type { HitPoint } from "../pins/carry.ts";
import { VARIED } from "./spreadSample.ts";
import { boardAtPins, entryDegOf, OFF_LANE_BOARD, qualityOf, throwBall } from "./thrown.ts";

/** A ball that has left the lane, or stopped on it, passes the pins here: it touches none. */
const PAST_THE_PINS = { board: -20, entryDeg: 0 };

/** Where the shots of a bowler's spread meet the pins: each thrown by itself, none read from a map. @param massLb of the ball */
export function hitsOn(thrower: Thrower, massLb: number, line: Line, sample: Float64Array): readonly HitPoint[] {
  const { spread } = thrower.bowler;
  const run = emptyRun();
  return Array.from({ length: sample.length / VARIED }, (_, shot) => {
    const [launch, laydown, speed, revs, rotation] = sample.subarray(shot * VARIED, (shot + 1) * VARIED);
    throwBall(thrower, line.laydownBoard + laydown * spread.laydownBoards, line.launchAngleDeg + launch * spread.launchAngleDeg, run, [
      speed,
      revs,
      rotation,
    ]);
    const quality = qualityOf(run, massLb);
    if (run.reached === 0 || xToBoard(run.breakX) < OFF_LANE_BOARD) return { ...PAST_THE_PINS, quality };
    return { board: boardAtPins(run), entryDeg: entryDegOf(run), quality };
  });
}
