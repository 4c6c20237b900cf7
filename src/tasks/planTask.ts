import type { FinishPlan } from "#engine/planning/plan";
import type { PlanQuestion } from "#engine/planning/question";
import type { FinishRating } from "#engine/planning/rating";
import { WORLDS } from "#engine/planning/worldCounts";
import type { WorldBlock } from "#engine/planning/worldScores";
import type { Executor, StopSignal } from "./executor.ts";
import { type FinishLoss, lossesOf } from "./losses.ts";

/** How far a plan has got. The plan is the best answer so far; it is there from the end of the first stage on. */
export interface PlanProgress {
  /** The lane as found, in the middle world and then in a few; the whole session in the middle world; the whole session in many. */
  readonly stage: "sketch" | "session" | "draws";
  /** The whole answer stands; further worlds only make it surer. */
  readonly isRefining: boolean;
  /** Units done and units in all, over every stage. */
  readonly done: number;
  readonly of: number;
  readonly plan: FinishPlan | null;
  /** What each candidate costs against the pick; empty until there is a plan. */
  readonly losses: readonly FinishLoss[];
}

export interface PlanRun {
  readonly executor: Executor;
  /** Over how many worlds, ≥ 0, where the usual number is not wanted. */
  readonly worlds?: number;
  /** Goes on after the answer is there, up to so many worlds or as many as there are. */
  readonly refinedTo?: number;
  readonly onProgress?: (progress: PlanProgress) => void;
  readonly signal?: StopSignal;
}

/** Worlds a unit: short enough to be stopped soon, long enough to be worth sending. On the lane as found a world takes a third of the time. */
const WORLDS_A_UNIT = { fresh: 4, session: 2 } as const;
/** So many times on the way the plan through the session is renewed. */
const RENEWED = 4;

/**
 * The finish plan, from the courses on the fresh lane, over a first answer in a few worlds, to the whole session in many.
 * The answer does not depend on how many workers there are, nor on which of them is done first: results are put
 * together in the order in which they were asked for.
 *
 * @throws {EngineFault} when the question cannot be answered as put; the signal's reason when it was stopped
 */
export async function runPlan(question: PlanQuestion, run: PlanRun): Promise<FinishPlan> {
  const signal = run.signal ?? null;
  const { executor } = run;
  const wanted = await executor.run({ kind: "wanted", question }, signal);
  const { finishes, metric, todaysLine } = wanted;
  const decide = (ratings: readonly FinishRating[], blocks: readonly WorldBlock[]): Promise<FinishPlan> =>
    executor.run({ kind: "decide", question, wanted, ratings, blocks }, signal);
  const worlds = Math.min(run.worlds ?? WORLDS.final, wanted.order.length);
  const most = Math.max(worlds, Math.min(run.refinedTo ?? 0, wanted.order.length));
  const first = blocksOf(0, Math.min(worlds, WORLDS.first), WORLDS_A_UNIT.fresh);
  const whole = blocksOf(0, worlds, WORLDS_A_UNIT.session);
  const further = blocksOf(worlds, most, WORLDS_A_UNIT.session);
  const tell = counter(run, 2 * finishes.length + first.length + whole.length + further.length);
  const rated = (stage: PlanProgress["stage"], span: WorldBlock["span"]) =>
    Promise.all(
      finishes.map((finish) =>
        tell.unit(stage, executor.run({ kind: "rate", question, finish, asked: { metric, todaysLine, span } }, signal)),
      ),
    );
  const scored = (stage: PlanProgress["stage"], span: WorldBlock["span"], spans: readonly [number, number][]) =>
    spans.map(([from, to]) => tell.unit(stage, executor.run({ kind: "worlds", question, wanted, span, from, to }, signal)));

  const sketches = await rated("sketch", "fresh");
  tell.plan("sketch", await decide(sketches, []));
  if (first.length > 0) tell.plan("sketch", await decide(sketches, await Promise.all(scored("sketch", "fresh", first))));

  const ratings = await rated("session", "session");
  let plan = await decide(ratings, []);
  tell.plan("session", plan);
  const blocks: WorldBlock[] = [];
  const through = async (spans: readonly [number, number][]) => {
    // All blocks are asked for at once, so that no worker waits.
    const asked = scored("draws", "session", spans);
    Promise.all(asked).catch(() => undefined);
    for (const [index, block] of asked.entries()) {
      blocks.push(await block);
      const isNews = index === asked.length - 1 || (index + 1) % Math.ceil(asked.length / RENEWED) === 0;
      if (!isNews) continue;
      plan = await decide(ratings, blocks);
      tell.plan("draws", plan, blocks);
    }
  };
  await through(whole);
  if (further.length > 0) tell.refining("draws");
  await through(further);
  return plan;
}

function blocksOf(first: number, worlds: number, aUnit: number): [number, number][] {
  const blocks: [number, number][] = [];
  for (let from = first; from < worlds; from += aUnit) blocks.push([from, Math.min(worlds, from + aUnit)]);
  return blocks;
}

/** Counts units as they come in, in whatever order, and tells of them. */
function counter(run: PlanRun, of: number) {
  let done = 0;
  let latest: FinishPlan | null = null;
  let losses: readonly FinishLoss[] = [];
  let isRefining = false;
  const tell = (stage: PlanProgress["stage"]): void => {
    if (run.signal?.aborted !== true) run.onProgress?.({ stage, isRefining, done, of, plan: latest, losses });
  };
  return {
    async unit<T>(stage: PlanProgress["stage"], result: Promise<T>): Promise<T> {
      const value = await result;
      done += 1;
      tell(stage);
      return value;
    },
    refining(stage: PlanProgress["stage"]): void {
      isRefining = true;
      tell(stage);
    },
    plan(stage: PlanProgress["stage"], plan: FinishPlan, blocks: readonly WorldBlock[] = []): void {
      latest = plan;
      losses = lossesOf(plan, blocks);
      tell(stage);
    },
  };
}
