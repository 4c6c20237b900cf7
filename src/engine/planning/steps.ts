import { EngineFault, type Problem } from "../fault.ts";
import type { Finish } from "../surface/finish.ts";
import { decide as decideOn } from "./decide.ts";
import { drawScores, type FinishDraws } from "./draws.ts";
import { groundOf } from "./ground.ts";
import type { FinishPlan } from "./plan.ts";
import type { PlanQuestion } from "./question.ts";
import { type FinishRating, sessionRating, sketchRating } from "./rating.ts";

/**
 * The finish plan in steps that can be run anywhere and in any order, so that an answer comes at once and gets better: sketch every finish, rate every
 * finish, draw the assumptions in blocks, decide after each. All are pure, and everything passed is plain data.
 */

/** The lane as found, coarsely: some tens of milliseconds. */
export function sketch(question: PlanQuestion, finish: Finish): FinishRating {
  checkQuestion(question);
  return sketchRating(groundOf(question), finish);
}

/** The whole session: some hundred and fifty milliseconds. */
export function rate(question: PlanQuestion, finish: Finish): FinishRating {
  checkQuestion(question);
  return sessionRating(groundOf(question), finish);
}

/** Scores a rated finish under draws `from` … `to − 1` of the assumptions: about two milliseconds each. */
export function drawChances(question: PlanQuestion, rating: FinishRating, from: number, to: number): FinishDraws {
  return drawScores(groundOf(question), rating, from, to);
}

/** The plan from what is known so far. */
export function decide(question: PlanQuestion, ratings: readonly FinishRating[], draws: readonly FinishDraws[]): FinishPlan {
  return decideOn(groundOf(question), ratings, draws);
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
