import { POCKET_BOARD, xToBoard } from "../lane/geometry.ts";
import type { Message } from "../message.ts";
import { emptyRun } from "../motion/averaged.ts";
import type { Thrower } from "../motion/track.ts";
import { type StrikeMap, strikeAt } from "../pins/carry.ts";
import type { Comparison, Standing } from "./comparison.ts";
import { type Ground, throwerOn } from "./ground.ts";
import type { Limits } from "./question.ts";
import { POCKET_REACH } from "./softLines.ts";
import { boardAtPins, entryDegOf, throwBall } from "./thrown.ts";

/** The widest that anybody plays: beyond the usual limits there is no more room to be had. */
const WIDEST = { laydownBoard: 36, launchAngleDeg: 4.5 };

/**
 * Nothing within the limits strikes often enough. Where the mean shot does come to the pocket, the shots scatter too much for the angle they come in at. Else it says on which
 * side it fails, for the smoothest finish sent from the innermost laydown at the widest angle. A ball that does not get to the pins is too slow; one that comes back past the
 * pocket hooks too much, unless wider limits would do; else it hooks too little.
 */
export function noLine({ question, assumed, carry }: Ground, { standings, best }: Comparison): Message {
  const throwerWith = ({ rating, finish }: Standing) => throwerOn(rating.found, question, finish, assumed);
  const entryDeg = steepestAtPocket(throwerWith(standings[best]), question.limits);
  if (entryDeg !== null) return { id: "message.noLine.scattered", params: { entryDeg, deadOnPercent: 100 * deadOn(carry, entryDeg) } };
  const thrower = throwerWith(standings[standings.length - 1]);
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

/** How far apart lines are looked at. */
const LOOK = { boards: 3, degrees: 0.25 } as const;

/** The steepest entry, degrees, of the mean shots within the limits that come to the pocket; null where none does. */
function steepestAtPocket(thrower: Thrower, { laydownBoard, launchAngleDeg, breakpointBoard }: Limits): number | null {
  const run = emptyRun();
  let steepest: number | null = null;
  for (let laydown = laydownBoard[0]; laydown <= laydownBoard[1]; laydown += LOOK.boards) {
    for (let launch = launchAngleDeg[0]; launch <= launchAngleDeg[1]; launch += LOOK.degrees) {
      throwBall(thrower, laydown, launch, run);
      const entry = entryDegOf(run);
      if (entry <= (steepest ?? 0) || !isWithin(boardAtPins(run), POCKET_REACH) || !isWithin(xToBoard(run.breakX), breakpointBoard))
        continue;
      steepest = entry;
    }
  }
  return steepest;
}

function isWithin(value: number, [least, most]: readonly [number, number]): boolean {
  return value >= least && value <= most;
}

/** Of shots that all come in at an angle and all hit the best board for it, how many strike. */
function deadOn(carry: StrikeMap, entryDeg: number): number {
  const [from, to] = POCKET_REACH;
  const boards = Array.from({ length: 1 + (to - from) / DEAD_ON_STEP }, (_, i) => from + i * DEAD_ON_STEP);
  return Math.max(...boards.map((board) => strikeAt(carry, board, entryDeg)));
}

const DEAD_ON_STEP = 0.25;
