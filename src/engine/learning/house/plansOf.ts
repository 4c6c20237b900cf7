import { inMirror, turnsBack } from "../../delivery/backup.ts";
import type { Lane } from "../../lane/lane.ts";
import type { HouseLearned, Limits, PlanQuestion } from "../../planning/question.ts";
import type { CorrectQuestion } from "./correct.ts";

/** What a house's shots were learned from, with what the plans of its balls are asked with. */
export interface Taught {
  readonly question: CorrectQuestion;
  /** The name of each situation's ball. */
  readonly names: readonly string[];
  readonly lane: Lane;
  readonly limits: Limits;
}

/** The finish plan of a ball, as it is asked without and with what was learned. */
export interface PlansAsked {
  readonly ball: string;
  readonly before: PlanQuestion;
  readonly after: PlanQuestion;
}

/** Plans take some seconds each: of more balls than this the first are told. */
const MOST_PLANS = 3;

/** The plans of the balls that were seen: each for whoever threw it first. */
export function plansOf({ question, names, lane, limits }: Taught, house: HouseLearned): readonly PlansAsked[] {
  const balls = [...new Set(names)].slice(0, MOST_PLANS);
  return balls.map((name) => {
    const situation = question.situations[names.indexOf(name)];
    const { bowler } = question.hands[situation.hand];
    const asked = (learned: HouseLearned | null): PlanQuestion => ({
      seed: question.seed,
      bowler: turnsBack(bowler) ? inMirror(bowler) : bowler,
      ball: situation.ball,
      lane,
      line: null,
      limits,
      candidates: null,
      outsideRangeReason: null,
      trial: [],
      readings: [],
      assumptions: question.assumptions,
      house: learned,
    });
    return { ball: name, before: asked(null), after: asked(house) };
  });
}
