import type { FinishDraws } from "#engine/planning/draws";
import type { FinishPlan } from "#engine/planning/plan";
import type { PlanQuestion } from "#engine/planning/question";
import type { FinishRating } from "#engine/planning/rating";
import type { Executor, StopSignal } from "./executor.ts";
import { type FinishLoss, lossesOf } from "./losses.ts";

/** How far a plan has got. The plan is the best answer so far; it is there from the end of the first stage on. */
export interface PlanProgress {
  readonly stage: "sketch" | "session" | "draws";
  /** Units done and units in all, over every stage. */
  readonly done: number;
  readonly of: number;
  readonly plan: FinishPlan | null;
  /** What each candidate costs against the pick; empty until there is a plan. */
  readonly losses: readonly FinishLoss[];
}

export interface PlanRun {
  readonly executor: Executor;
  /** How many draws of the assumptions to take, ≥ 0, where the engine's own number is not wanted. */
  readonly draws?: number;
  readonly onProgress?: (progress: PlanProgress) => void;
  readonly signal?: StopSignal;
}

/** Draws a unit: short enough to be stopped soon, long enough to be worth sending. */
const DRAWS_A_UNIT = 20;

/**
 * The finish plan, from a quick sketch of the fresh lane, over the whole session, to the draws that say how sure it is.
 * The answer does not depend on how many workers there are, nor on which of them is done first: results are put
 * together in the order in which they were asked for.
 *
 * @throws {EngineFault} when the question cannot be answered as put; the signal's reason when it was stopped
 */
export async function runPlan(question: PlanQuestion, run: PlanRun): Promise<FinishPlan> {
  const signal = run.signal ?? null;
  const { executor } = run;
  const decide = (ratings: readonly FinishRating[], draws: readonly FinishDraws[]): Promise<FinishPlan> =>
    executor.run({ kind: "decide", question, ratings, draws }, signal);

  const wanted = await executor.run({ kind: "wanted", question }, signal);
  const { finishes } = wanted;
  const blocks = blocksOf(run.draws ?? wanted.draws);
  const tell = counter(run, finishes.length * (2 + blocks.length));

  const sketches = await Promise.all(
    finishes.map((finish) => tell.unit("sketch", executor.run({ kind: "sketch", question, finish }, signal))),
  );
  tell.plan("sketch", await decide(sketches, []), []);

  const ratings = await Promise.all(
    finishes.map((finish) => tell.unit("session", executor.run({ kind: "rate", question, finish }, signal))),
  );
  let plan = await decide(ratings, []);
  tell.plan("session", plan, []);

  // All blocks are asked for at once, so that no worker waits; the plan is renewed when a block is there for every finish.
  const asked = blocks.map(([from, to]) =>
    Promise.all(ratings.map((rating) => tell.unit("draws", executor.run({ kind: "draws", question, rating, from, to }, signal)))),
  );
  const allAsked = Promise.all(asked);
  allAsked.catch(() => undefined);
  const draws: FinishDraws[] = [];
  for (const [index, block] of asked.entries()) {
    draws.push(...(await block));
    const isNews = index === blocks.length - 1 || (index + 1) % 3 === 0;
    if (isNews) {
      plan = await decide(ratings, draws);
      tell.plan("draws", plan, draws);
    }
  }
  return plan;
}

function blocksOf(draws: number): [number, number][] {
  const blocks: [number, number][] = [];
  for (let from = 0; from < draws; from += DRAWS_A_UNIT) blocks.push([from, Math.min(draws, from + DRAWS_A_UNIT)]);
  return blocks;
}

/** Counts units as they come in, in whatever order, and tells of them. */
function counter(run: PlanRun, of: number) {
  let done = 0;
  let latest: FinishPlan | null = null;
  let losses: readonly FinishLoss[] = [];
  const tell = (stage: PlanProgress["stage"]): void => {
    if (run.signal?.aborted !== true) run.onProgress?.({ stage, done, of, plan: latest, losses });
  };
  return {
    async unit<T>(stage: PlanProgress["stage"], result: Promise<T>): Promise<T> {
      const value = await result;
      done += 1;
      tell(stage);
      return value;
    },
    plan(stage: PlanProgress["stage"], plan: FinishPlan, draws: readonly FinishDraws[]): void {
      latest = plan;
      losses = lossesOf(plan, draws);
      tell(stage);
    },
  };
}
