import { POCKET_BOARD } from "../lane/geometry.ts";
import type { Message } from "../message.ts";
import { emptyRun } from "../motion/averaged.ts";
import type { Comparison } from "./comparison.ts";
import { type PlanGround, throwerOn } from "./ground.ts";
import { boardAtPins, throwBall } from "./outcomeMap.ts";

/**
 * Nothing within the limits finds the pocket: says on which side it fails. If even the smoothest finish sent from the innermost laydown at the widest angle
 * comes back past the pocket, the ball hooks too much; else too little.
 */
export function noLine({ question, assumed }: PlanGround, { standings }: Comparison): Message {
  const smoothest = standings[standings.length - 1];
  const [, laydownBoard] = question.limits.laydownBoard;
  const [, launchAngleDeg] = question.limits.launchAngleDeg;
  const run = emptyRun();
  throwBall(throwerOn(smoothest.rating.found, question, smoothest.finish, assumed), laydownBoard, launchAngleDeg, run);
  const tooMuch = boardAtPins(run) > POCKET_BOARD;
  return {
    id: tooMuch ? "message.noLine.hooksTooMuch" : "message.noLine.hooksTooLittle",
    params: { chancePercent: 100 * Math.max(...standings.map((standing) => standing.score)), laydownBoard, launchAngleDeg },
  };
}
