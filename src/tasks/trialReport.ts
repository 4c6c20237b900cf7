import { band, weightedMean } from "#engine/planning/comparison";
import { groundIn } from "#engine/planning/ground";
import type { Interval } from "#engine/planning/plan";
import type { PlanQuestion, TrialShot } from "#engine/planning/question";
import { STYLES } from "#engine/planning/situations";
import { fitOf, predictedBoard, type TrialMean, trialMeans } from "#engine/planning/trial";
import { effectiveNumber } from "#engine/worlds/effectiveNumber";
import { ensemble } from "#engine/worlds/ensemble";
import type { Executor } from "./executor.ts";
import { runPlan } from "./planTask.ts";

/** A trial held against the worlds. */
export interface TrialReport {
  /** What was seen with each finish, and where the worlds have it arrive: before they were weighed by it, and after. */
  readonly finishes: readonly (TrialMean & { readonly before: Interval | null; readonly after: Interval | null })[];
  /** Null without a job: without ball, bowler and line there is nothing to hold it against. */
  readonly worlds: {
    readonly ensemble: string;
    readonly effectiveBefore: number;
    readonly effectiveAfter: number;
    /** So few worlds say what was seen that what follows is rough. */
    readonly isThin: boolean;
    readonly pickBefore: string | null;
    readonly pickAfter: string | null;
  } | null;
}

/** With fewer worlds than this a weighed answer is rough. */
const LEAST_EFFECTIVE = 50;

/** @throws EngineFault where the job names no line */
export async function trialReport(shots: readonly TrialShot[], question: PlanQuestion | null, executor: Executor): Promise<TrialReport> {
  if (question === null) {
    const alone = { trial: shots, line: { laydownBoard: 20, launchAngleDeg: 0 }, bowler: STYLES.matched };
    return { finishes: trialMeans(alone).map((seen) => ({ ...seen, before: null, after: null })), worlds: null };
  }
  const means = trialMeans(question);
  const { digest, worlds } = ensemble();
  const grounds = worlds.map((world) => groundIn(world, question));
  const before = worlds.map(({ weight }) => weight);
  const fits = grounds.map(fitOf);
  const best = Math.max(...fits);
  const after = before.map((weight, i) => weight * Math.exp(fits[i] - best));
  const [without, weighed] = await Promise.all([runPlan({ ...question, trial: [] }, { executor }), runPlan(question, { executor })]);
  return {
    finishes: means.map((seen) => {
      const boards = grounds.map((ground) => predictedBoard(ground, seen.finish));
      return { ...seen, before: over(boards, before), after: over(boards, after) };
    }),
    worlds: {
      ensemble: digest,
      effectiveBefore: effectiveNumber(before),
      effectiveAfter: effectiveNumber(after),
      isThin: effectiveNumber(after) < LEAST_EFFECTIVE,
      pickBefore: without.pick?.finish ?? null,
      pickAfter: weighed.pick?.finish ?? null,
    },
  };
}

function over(values: readonly number[], weights: readonly number[]): Interval {
  const value = weightedMean(values, weights);
  return { value, ...band(values, value, weights) };
}
