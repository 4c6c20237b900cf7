import type { Ball, BallJob, CoverId } from "#engine/ball/ball";
import { TYPICAL_BALL } from "#engine/ball/typical";
import { ratingsWanted } from "#engine/planning/candidates";
import type { FinishPlan } from "#engine/planning/plan";
import type { PlanQuestion } from "#engine/planning/question";
import { STYLES, type StyleId } from "#engine/planning/situations";
import { decide, drawChances, rate, sketch } from "#engine/planning/steps";
import { parseFinish } from "#engine/surface/finish";

/** Questions for the tests of the planner: invented bowlers, typical balls, named patterns. */
export function asked(
  style: StyleId,
  cover: CoverId,
  pattern: string,
  more: Partial<PlanQuestion> = {},
  job: BallJob = "strike",
  finish = "2000",
): PlanQuestion {
  const ball: Ball = { ...TYPICAL_BALL, cover, job, finish: parseFinish(finish) };
  return {
    seed: 1,
    bowler: STYLES[style],
    ball,
    lane: { pattern: { kind: "named", id: pattern }, playedShots: 0 },
    line: null,
    limits: { laydownBoard: [9, 36], launchAngleDeg: [-1.5, 4.5], breakpointBoard: [4, 39] },
    candidates: null,
    outsideRangeReason: null,
    house: null,
    assumptions: {},
    ...more,
  };
}

/** A whole plan with a few draws of the assumptions. */
export function planned(question: PlanQuestion, draws = 12): FinishPlan {
  const ratings = ratingsWanted(question).map((finish) => rate(question, finish));
  return decide(question, ratings, draws > 0 ? ratings.map((rating) => drawChances(question, rating, 0, draws)) : []);
}

/** The first answer only. */
export function sketched(question: PlanQuestion): FinishPlan {
  return decide(
    question,
    ratingsWanted(question).map((finish) => sketch(question, finish)),
    [],
  );
}
