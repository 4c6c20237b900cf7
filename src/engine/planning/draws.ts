import { ASSUMPTION_IDS, type Assumed, type AssumptionId, drawAssumed } from "../assumptions.ts";
import type { Ball } from "../ball/ball.ts";
import { coversOf } from "../ball/covers.ts";
import { deriveSeed, evenPoints } from "../random.ts";
import { finishText } from "../surface/finish.ts";
import type { PlanGround } from "./ground.ts";
import { assumptionsOfBall, behavingAs } from "./planAssumptions.ts";
import type { HouseLearned, PlanQuestion } from "./question.ts";
import type { FinishRating } from "./rating.ts";
import { localScore, mean, type Rated } from "./score.ts";

/** How many draws of the assumptions a final answer rests on: with 200, a share of 90 % is known to ± 4 points. */
export const DRAWS = 200;

/** Scores of one finish under the draws from `from` on. */
export interface FinishDraws {
  readonly finish: string;
  readonly from: number;
  readonly scores: readonly number[];
}

/** The same draws for every finish: what differs between finishes is then not the draw. */
function drawnAssumptions({ seed, ball, house }: PlanQuestion, centre: Assumed): readonly Assumed[] {
  const ids = assumptionsOfBall(ball);
  const drawn = drawnFrom(centre, ids, evenPoints(DRAWS, ids.length, deriveSeed(seed, 4)), DRAWS);
  const learned = house === null ? drawn : drawn.map((assumed, draw) => learnedIn(house, draw, assumed));
  return ofAnyCover(ball, seed, learned);
}

/** Each draw of one cover, as often of any that the ball may have. */
export function ofAnyCover(ball: Pick<Ball, "cover" | "unknown" | "job">, seed: number, draws: readonly Assumed[]): readonly Assumed[] {
  const covers = coversOf(ball);
  const which = evenPoints(draws.length, 1, deriveSeed(seed, 6));
  return draws.map((assumed, draw) => behavingAs(assumed, ball.cover, covers[Math.floor(which[draw] * covers.length)]));
}

/** What a house has taught takes the place of the ranges, with what it ties together left tied. */
function learnedIn({ ids, draws }: HouseLearned, draw: number, assumed: Assumed): Assumed {
  const row = draws[draw % draws.length];
  return { ...assumed, ...Object.fromEntries(ids.map((id, i) => [id, row[i]])) };
}

/** Draws of the named assumptions at evenly spread points. @param points `count × ids.length` numbers in [0, 1) */
export function drawnFrom(centre: Assumed, ids: readonly AssumptionId[], points: Float64Array, count: number): readonly Assumed[] {
  return Array.from({ length: count }, (_, draw) => drawAssumed(centre, ids, points, draw * ids.length));
}

/** How many draws close about the centre make its own local score, and how close: a quarter of each range. */
const CENTRE_DRAWS = 16;
const CENTRE_SHARE = 0.25;

/**
 * The local score under the registry's values, as a mean over draws close about them: one evaluation by itself chooses its line on a small sample, and
 * what it errs by would be carried into every draw's difference to it.
 */
export function centreScore(ground: PlanGround, rated: Rated): number {
  const { question, assumed: centre } = ground;
  const draws = drawnAssumptions(question, centre).slice(0, CENTRE_DRAWS);
  return mean(draws.map((drawn) => localScore(ground, rated, closerTo(centre, drawn))));
}

/** A draw brought close to the centre: a quarter of the way out. */
export function closerTo(centre: Assumed, drawn: Assumed): Assumed {
  const values: Record<AssumptionId, number> = { ...centre };
  for (const id of ASSUMPTION_IDS) values[id] += CENTRE_SHARE * (drawn[id] - centre[id]);
  return values;
}

/** Scores a rated finish under draws `from` … `to − 1`. */
export function drawScores(ground: PlanGround, rating: FinishRating, from: number, to: number): FinishDraws {
  const draws = drawnAssumptions(ground.question, ground.assumed).slice(from, to);
  return { finish: finishText(rating.finish), from, scores: draws.map((assumed) => localScore(ground, rating, assumed)) };
}
