import { type Assumed, drawAssumed } from "../assumptions.ts";
import type { CoverId } from "../ball/ball.ts";
import { deriveSeed, evenPoints } from "../random.ts";
import { finishText } from "../surface/finish.ts";
import type { PlanGround } from "./ground.ts";
import { planAssumptions } from "./planAssumptions.ts";
import type { FinishRating } from "./rating.ts";
import { localScore } from "./score.ts";

/** How many draws of the assumptions a final answer rests on: with 200, a share of 90 % is known to ± 4 points. */
export const DRAWS = 200;

/** Scores of one finish under the draws from `from` on. */
export interface FinishDraws {
  readonly finish: string;
  readonly from: number;
  readonly scores: readonly number[];
}

/** The same draws for every finish: what differs between finishes is then not the draw. */
function drawnAssumptions(seed: number, cover: CoverId, centre: Assumed): readonly Assumed[] {
  const ids = planAssumptions(cover);
  const points = evenPoints(DRAWS, ids.length, deriveSeed(seed, 4));
  return Array.from({ length: DRAWS }, (_, draw) => drawAssumed(centre, ids, points, draw * ids.length));
}

/** Scores a rated finish under draws `from` … `to − 1`. */
export function drawScores(ground: PlanGround, rating: FinishRating, from: number, to: number): FinishDraws {
  const draws = drawnAssumptions(ground.question.seed, ground.question.ball.cover, ground.assumed).slice(from, to);
  return { finish: finishText(rating.finish), from, scores: draws.map((assumed) => localScore(ground, rating, assumed)) };
}
