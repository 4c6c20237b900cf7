import { ARROW_BOARDS, ARROWS_FT, type Arrow } from "../delivery/arrows.ts";
import type { Line } from "../delivery/bowler.ts";
import { BOARD, POCKET_BOARD } from "../lane/geometry.ts";
import { DEGREE, FOOT } from "../units.ts";
import { type PlanGround, throwerOn, usualQuality } from "./ground.ts";
import { COARSE, chanceOnLine, mapValue, outcomeMap } from "./outcomeMap.ts";
import type { FinishRating } from "./rating.ts";
import { STRAIGHT } from "./score.ts";

const LAUNCH_STEP = 0.1;
/** Lines whose mean shot ends further than this from the pocket are not worth scoring, boards. */
const WORTH_SCORING = 3;

/**
 * The line that is played today: the one that was named; else the best with today's finish of those over the arrow that the bowler plays; else the best of all.
 *
 * @param today null where today's finish was not rated yet
 */
export function todaysLine(ground: PlanGround, today: FinishRating | null): Line | null {
  const { line, bowler } = ground.question;
  if (line !== null || today === null) return line;
  if (bowler.plays === undefined || today.line === null || today.line === STRAIGHT) return today.line;
  return bestOver(bowler.plays, ground, today) ?? today.line;
}

/** The best line over an arrow on the lane as found; null where none of them comes near the pocket. */
function bestOver(arrow: Arrow, ground: PlanGround, today: FinishRating): Line | null {
  const { question, assumed, carry, searchSample } = ground;
  const { limits, bowler } = question;
  const map = outcomeMap(throwerOn(today.found, question, today.finish, assumed), usualQuality(question), limits, COARSE);
  let best: { readonly line: Line; readonly chance: number } | null = null;
  for (const line of linesOver(arrow, limits)) {
    const { laydownBoard, launchAngleDeg } = line;
    if (Math.abs(mapValue(map, map.board, laydownBoard, launchAngleDeg) - POCKET_BOARD) >= WORTH_SCORING) continue;
    const chance = chanceOnLine(map, bowler, carry, laydownBoard, launchAngleDeg, searchSample);
    if (best === null || chance > best.chance) best = { line, chance };
  }
  return best?.line ?? null;
}

/** Lines within the limits that pass the arrows on its boards. Up to there the ball skids: it goes as it was sent. */
export function* linesOver(arrow: Arrow, limits: PlanGround["question"]["limits"]): Generator<Line> {
  const [from, to] = ARROW_BOARDS[arrow];
  const [least, most] = limits.launchAngleDeg;
  const steps = Math.floor((most - least) / LAUNCH_STEP + 1e-9);
  for (let board = from; board <= to; board++) {
    for (let step = 0; step <= steps; step++) {
      const launchAngleDeg = Math.round(10 * (least + step * LAUNCH_STEP)) / 10;
      const laydownBoard = Math.round(10 * (board + (Math.tan(launchAngleDeg * DEGREE) * ARROWS_FT * FOOT) / BOARD)) / 10;
      if (laydownBoard >= limits.laydownBoard[0] && laydownBoard <= limits.laydownBoard[1]) yield { laydownBoard, launchAngleDeg };
    }
  }
}
