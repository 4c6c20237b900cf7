import type { Ball, BallJob, CoverId } from "#engine/ball/ball";
import { TYPICAL_BALL } from "#engine/ball/typical";
import type { FinishPlan } from "#engine/planning/plan";
import type { PlanQuestion } from "#engine/planning/question";
import { STYLES, type StyleId } from "#engine/planning/situations";
import { decide, rate, scoreWorlds, wantedOf } from "#engine/planning/steps";
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
    trial: [],
    readings: [],
    house: null,
    assumptions: {},
    ...more,
  };
}

/** A whole plan over a few worlds. */
export function planned(question: PlanQuestion, worlds = 8): FinishPlan {
  const wanted = wantedOf(question);
  const ratings = wanted.finishes.map((finish) => rate(question, finish, { ...wanted, span: "session" }));
  return decide(question, wanted, ratings, worlds > 0 ? [scoreWorlds(question, wanted, "session", 0, worlds)] : []);
}

/** The first answer only: the lane as found, in the middle world, or over the first few. */
export function sketched(question: PlanQuestion, worlds = 0): FinishPlan {
  const wanted = wantedOf(question);
  const ratings = wanted.finishes.map((finish) => rate(question, finish, { ...wanted, span: "fresh" }));
  return decide(question, wanted, ratings, worlds > 0 ? [scoreWorlds(question, wanted, "fresh", 0, worlds)] : []);
}
