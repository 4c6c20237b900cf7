import { COVERS_THAT_STRIKE } from "../../ball/ball.ts";
import { COVERS } from "../../ball/covers.ts";
import { TYPICAL_BALL } from "../../ball/typical.ts";
import { finishText } from "../../surface/finish.ts";
import type { BagGap } from "./bagPlan.ts";
import type { RatedState } from "./options.ts";
import { type BagQuestion, ratedStages } from "./question.ts";
import { type BallState, strikes } from "./states.ts";
import type { StageWorth } from "./worth.ts";

/** An ordinary ball that is not in the bag, at some stages: to tell where the bag has a gap. */
export interface ReferenceWorth {
  readonly state: BallState;
  readonly worth: readonly StageWorth[];
}

/** A gap smaller than this is none: strikes in a hundred. */
const LEAST_POINTS = 2;

/** Places among the rated stages at which gaps are looked for: first, middle, last. */
export function gapPlaces({ session }: BagQuestion): readonly number[] {
  const last = ratedStages(session).length - 1;
  return [...new Set([0, Math.floor(last / 2), last])];
}

/** Ordinary balls of the covers that the bag lacks, in their usual finishes and as heavy as the bag's first. */
export function referenceStates({ balls }: BagQuestion): readonly BallState[] {
  const massLb = balls.find(strikes)?.ball.massLb ?? TYPICAL_BALL.massLb;
  const has = new Set(balls.filter(strikes).map(({ ball }) => ball.cover));
  return COVERS_THAT_STRIKE.filter((cover) => !has.has(cover)).flatMap((cover) =>
    COVERS[cover].usual.map(
      (finish): BallState => ({ ball: -1, finish, isToday: false, minutes: 0, as: { ...TYPICAL_BALL, massLb, name: "", cover, finish } }),
    ),
  );
}

/** Where another ball would do better than the best of the bag, however worked. */
export function gapsOf(question: BagQuestion, rated: readonly RatedState[], references: readonly ReferenceWorth[]): readonly BagGap[] {
  return gapPlaces(question).flatMap((at, i) => {
    const best = Math.max(0, ...rated.map(({ worth }) => worth[at].chance));
    const other = references.reduce<ReferenceWorth | null>(
      (top, one) => (top === null || one.worth[i].chance > top.worth[i].chance ? one : top),
      null,
    );
    if (other === null) return [];
    const points = 100 * (other.worth[i].chance - best);
    return points < LEAST_POINTS
      ? []
      : [{ stage: ratedStages(question.session)[at], cover: other.state.as.cover, finish: finishText(other.state.finish), points }];
  });
}
