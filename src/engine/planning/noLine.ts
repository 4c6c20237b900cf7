import { POCKET_BOARD } from "../lane/geometry.ts";
import type { Message } from "../message.ts";
import { emptyRun } from "../motion/averaged.ts";
import type { Comparison } from "./comparison.ts";
import { type Ground, throwerOn } from "./ground.ts";
import { boardAtPins, throwBall } from "./thrown.ts";

/** The widest that anybody plays: beyond the usual limits there is no more room to be had. */
const WIDEST = { laydownBoard: 36, launchAngleDeg: 4.5 };

/**
 * Nothing within the limits finds the pocket: says on which side it fails, for the smoothest finish sent from the innermost laydown at the widest angle. A ball that does not get to the pins is too slow; one that comes back past the
 * pocket hooks too much, unless wider limits would do; else it hooks too little.
 */
export function noLine({ question, assumed }: Ground, { standings }: Comparison): Message {
  const smoothest = standings[standings.length - 1];
  const thrower = throwerOn(smoothest.rating.found, question, smoothest.finish, assumed);
  const run = emptyRun();
  const boardFrom = (laydownBoard: number, launchAngleDeg: number) => {
    throwBall(thrower, laydownBoard, launchAngleDeg, run);
    return boardAtPins(run);
  };
  const line = { laydownBoard: question.limits.laydownBoard[1], launchAngleDeg: question.limits.launchAngleDeg[1] };
  const widest = {
    laydownBoard: Math.max(line.laydownBoard, WIDEST.laydownBoard),
    launchAngleDeg: Math.max(line.launchAngleDeg, WIDEST.launchAngleDeg),
  };
  const board = boardFrom(line.laydownBoard, line.launchAngleDeg);
  if (run.reached === 0) return { id: "message.noLine.tooSlow", params: {} };
  if (board <= POCKET_BOARD) return { id: "message.noLine.hooksTooLittle", params: line };
  const wide = boardFrom(widest.laydownBoard, widest.launchAngleDeg);
  return wide < POCKET_BOARD ? { id: "message.noLine.limits", params: line } : { id: "message.noLine.hooksTooMuch", params: line };
}
