import { ASSUMPTION_IDS, type Assumed, drawAssumed } from "../assumptions.ts";
import { deriveSeed, evenPoints } from "../random.ts";
import { finishText } from "../surface/finish.ts";
import type { PlanGround } from "./ground.ts";
import type { FinishRating } from "./rating.ts";
import { localScore } from "./score.ts";

/** How many draws of the assumptions a final answer rests on: with 200, a share of 90 % is known to ± 4 points. */
export const DRAWS = 200;

/** Scores and chances of one finish under the draws from `from` on. */
export interface FinishDraws {
  readonly finish: string;
  readonly from: number;
  readonly scores: readonly number[];
  readonly chances: readonly number[];
}

/** The same draws for every finish: what differs between finishes is then not the draw. */
export function drawnAssumptions(seed: number, centre: Assumed): readonly Assumed[] {
  const points = evenPoints(DRAWS, ASSUMPTION_IDS.length, deriveSeed(seed, 4));
  return Array.from({ length: DRAWS }, (_, draw) => drawAssumed(centre, points, draw * ASSUMPTION_IDS.length));
}

/** Scores a rated finish under draws `from` … `to − 1`. */
export function drawScores(ground: PlanGround, rating: FinishRating, from: number, to: number): FinishDraws {
  const draws = drawnAssumptions(ground.question.seed, ground.assumed).slice(from, to);
  const local = draws.map((assumed) => localScore(ground, rating, assumed));
  return { finish: finishText(rating.finish), from, scores: local.map((l) => l.score), chances: local.map((l) => l.chance) };
}
