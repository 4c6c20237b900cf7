import type { Line } from "../delivery/bowler.ts";
import { xToBoard } from "../lane/geometry.ts";
import { emptyRun } from "../motion/averaged.ts";
import type { Thrower } from "../motion/track.ts";
import { throwBall } from "./thrown.ts";

/** The line on which hook is measured: straight down the middle. */
export const STRAIGHT: Line = { laydownBoard: 20, launchAngleDeg: 0 };

/** How far a ball sent straight has been turned aside at the pins, boards: what a spare ball should do least of. */
export function hookBoards(thrower: Thrower): number {
  const run = emptyRun();
  throwBall(thrower, STRAIGHT.laydownBoard, STRAIGHT.launchAngleDeg, run);
  return Math.abs(xToBoard(run.x) - STRAIGHT.laydownBoard);
}
