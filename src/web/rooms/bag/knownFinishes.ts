import type { Ball } from "#contract/records/ball";
import { knownFinish } from "#contract/records/benchBall";
import type { BagPlan } from "#engine/planning/bag/bagPlan";
import { BAG_ROOM } from "#words/en/rooms/bag";

/** Today's finish of a ball of which nobody knows it: what stood for it in the plan is no finish of the ball. */
export const NOT_KNOWN = BAG_ROOM.finishNotKnown;

/** A plan in which the finish of a ball as it lies is said only where it is known. Its own names tell twins apart by what comes after the ball's. */
export function withKnownFinishes(plan: BagPlan, balls: readonly Ball[]): BagPlan {
  const unknown = balls.filter((ball) => knownFinish(ball) === null).map(({ name }) => name);
  const known = <T extends { readonly finish: string; readonly asItLies: boolean }>(of: T, ball: string): T =>
    of.asItLies && unknown.some((name) => ball === name || ball.startsWith(`${name} `)) ? { ...of, finish: NOT_KNOWN } : of;
  return {
    ...plan,
    balls: plan.balls.map((ball) => known(ball, ball.name)),
    stages: plan.stages.map((stage) => known(stage, stage.ball)),
    stretches: plan.stretches.map((stretch) => ({
      ...known(stretch, stretch.ball),
      runnerUp: stretch.runnerUp === null ? null : known(stretch.runnerUp, stretch.runnerUp.ball),
    })),
  };
}
