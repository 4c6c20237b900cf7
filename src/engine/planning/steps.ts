import { isKnown } from "../ball/ball.ts";
import { EngineFault, type Problem } from "../fault.ts";
import { type Finish, sameFinish } from "../surface/finish.ts";
import { ratingsWanted } from "./candidates.ts";
import { type Decided, decide as decideOn } from "./decide.ts";
import { groundOf } from "./ground.ts";
import { metricOf } from "./metric.ts";
import type { FinishPlan } from "./plan.ts";
import type { PlanQuestion } from "./question.ts";
import { type FinishRating, type RatingAsked, rateFinish } from "./rating.ts";
import { filmFound, sessionOf } from "./session.ts";
import { STRAIGHT } from "./straight.ts";
import { todaysLine } from "./todaysLine.ts";
import { weighedBy } from "./trial.ts";
import { scoresIn, type WorldBlock } from "./worldScores.ts";
import { worldsAsked } from "./worldsAsked.ts";

/**
 * The finish plan in steps that can be run anywhere and in any order, so that an answer comes at once and gets better: look at the question, rate every
 * finish in the middle world, score all of them in blocks of worlds, decide after each. All are pure, and everything passed is plain data.
 */

/** What a plan computes: which finishes, what they are judged by, and the line that is played today. */
export interface Wanted extends Decided {
  readonly finishes: readonly Finish[];
  /** Worlds in the order in which they are taken, by their ids: as the ensemble has them, or, where shots were seen, those that say it best first. */
  readonly order: readonly number[];
}

/** A look at the lane as found with every finish, in the middle world: some ten milliseconds each. */
export function wantedOf(question: PlanQuestion): Wanted {
  checkQuestion(question);
  const ground = groundOf(question);
  const finishes = ratingsWanted(question);
  const found = filmFound(ground);
  const looks = finishes.map((finish) => sessionOf(ground, finish, found, 1, "strikeChance")[0]);
  const best = Math.max(...looks.map(({ choice }) => choice.best?.chance ?? 0));
  const today = looks[finishes.findIndex((finish) => sameFinish(finish, question.ball.finish))];
  const metric = metricOf(question.ball.job, best);
  // A spare ball is sent straight, and on that line its hook is measured.
  const line = metric === "leastHook" ? (question.line ?? STRAIGHT) : todaysLine(question, today);
  return { finishes, metric, todaysLine: line, order: orderFor(question) };
}

/** Where shots were seen few worlds say it; so that not only the first few are asked, those that do are taken first. */
function orderFor(question: PlanQuestion): readonly number[] {
  if (question.trial.length === 0) return worldsAsked(question).own.map(({ id }) => id);
  const weighed = weighedBy(question);
  return weighed.toSorted((a, b) => b.weight - a.weight || a.world.id - b.world.id).map(({ world }) => world.id);
}

/** One finish in the middle world: some ten milliseconds on the lane as found, some fifty through the session. */
export function rate(question: PlanQuestion, finish: Finish, asked: RatingAsked): FinishRating {
  checkQuestion(question);
  return rateFinish(groundOf(question), finish, asked);
}

/** Every finish in the worlds `from` … `to − 1` of the order: some hundred milliseconds a world through the session, a third of it on the lane as found. */
export function scoreWorlds(
  question: PlanQuestion,
  { finishes, metric, todaysLine, order }: Wanted,
  span: WorldBlock["span"],
  from: number,
  to: number,
): WorldBlock {
  const today = isKnown(question.ball, "finish") ? question.ball.finish : null;
  const worlds = order.slice(from, to).map(worldsAsked(question).drawn);
  return scoresIn(worlds, from, question, { finishes, today, todaysLine, metric, span });
}

/** The plan from what is known so far. */
export function decide(
  question: PlanQuestion,
  decided: Decided,
  ratings: readonly FinishRating[],
  blocks: readonly WorldBlock[],
): FinishPlan {
  return decideOn(groundOf(question), decided, ratings, blocks);
}

/** Refuses what no bowler, ball or lane can be, every field at once. */
export function checkQuestion({ bowler, ball, lane, limits }: PlanQuestion): void {
  const problems: Problem[] = [];
  const need = (path: string, value: number, allowed: string, ok: boolean) => {
    if (!Number.isFinite(value) || !ok) problems.push({ path, value, allowed });
  };
  need("bowler.speedMph", bowler.speedMph, "more than 0, at most 40", bowler.speedMph > 0 && bowler.speedMph <= 40);
  need("bowler.revRateRpm", bowler.revRateRpm, "0 to 1000", bowler.revRateRpm >= 0 && bowler.revRateRpm <= 1000);
  need("bowler.axisRotationDeg", bowler.axisRotationDeg, "-180 to 180", Math.abs(bowler.axisRotationDeg) <= 180);
  need("bowler.axisTiltDeg", bowler.axisTiltDeg, "-90 to 90", Math.abs(bowler.axisTiltDeg) <= 90);
  for (const [name, sd] of Object.entries(bowler.spread)) need(`bowler.spread.${name}`, sd, "0 or more", sd >= 0);
  need("ball.massLb", ball.massLb, "more than 0", ball.massLb > 0);
  need(
    "ball.rgIn",
    ball.rgIn,
    "more than 0, less than the ball's radius",
    ball.rgIn > 0 && ball.rgIn + ball.differentialIn < ball.diameterIn / 2,
  );
  need(
    "lane.playedShots",
    lane.playedShots,
    "a whole number from 0 to 500",
    Number.isInteger(lane.playedShots) && lane.playedShots >= 0 && lane.playedShots <= 500,
  );
  for (const [name, [least, most]] of Object.entries(limits)) need(`limits.${name}`, least, `not above the second, ${most}`, least <= most);
  if (problems.length > 0) throw new EngineFault(problems);
}
