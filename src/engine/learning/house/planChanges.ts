import type { Lane } from "../../lane/lane.ts";
import type { FinishPlan } from "../../planning/plan.ts";
import type { HouseLearned, Limits, PlanQuestion } from "../../planning/question.ts";
import { decide, rate, wantedOf } from "../../planning/steps.ts";
import type { CorrectQuestion } from "./correct.ts";

/** What a house's shots were learned from, with what the plans of its balls are asked with. */
export interface Taught {
  readonly question: CorrectQuestion;
  /** The name of each situation's ball. */
  readonly names: readonly string[];
  readonly lane: Lane;
  readonly limits: Limits;
}

/** What the finish plan of a ball is without and with what was learned. */
export interface PlanChange {
  readonly ball: string;
  readonly before: FinishPlan;
  readonly after: FinishPlan;
}

/** Plans take some seconds each: of more balls than this the first are told. */
const MOST_PLANS = 3;

/** The finish plans of the balls that were seen, before and after: without draws, so that they name no odds of being right. */
export function planChanges({ question, names, lane, limits }: Taught, house: HouseLearned): readonly PlanChange[] {
  const balls = [...new Set(names)].slice(0, MOST_PLANS);
  return balls.map((name) => {
    const situation = question.situations[names.indexOf(name)];
    const asked = (learned: HouseLearned | null): PlanQuestion => ({
      seed: question.seed,
      bowler: question.hands[situation.hand].bowler,
      ball: situation.ball,
      lane,
      line: null,
      limits,
      candidates: null,
      outsideRangeReason: null,
      trial: [],
      assumptions: question.assumptions,
      house: learned,
    });
    return { ball: name, before: firstPlan(asked(null)), after: firstPlan(asked(house)) };
  });
}

/** The whole session under the mean of what is assumed; how sure it is takes the plan itself. */
function firstPlan(question: PlanQuestion): FinishPlan {
  const wanted = wantedOf(question);
  const asked = { ...wanted, span: "session" } as const;
  return decide(
    question,
    wanted,
    wanted.finishes.map((finish) => rate(question, finish, asked)),
    [],
  );
}

/** How much likelier a ball's first shot strikes with the pick, by the new plan against the old; of the best where there is no pick. */
export function chanceChange({ before, after }: PlanChange): number {
  return chanceOf(after) - chanceOf(before);
}

function chanceOf({ pick, candidates }: FinishPlan): number {
  const picked = candidates.find(({ finish }) => finish === pick?.finish);
  return picked?.chance?.value ?? Math.max(0, ...candidates.map(({ chance }) => chance?.value ?? 0));
}
