import { band } from "#engine/planning/comparison";
import { groundIn } from "#engine/planning/ground";
import type { Interval } from "#engine/planning/plan";
import type { PlanQuestion, TrialShot } from "#engine/planning/question";
import { STYLES } from "#engine/planning/situations";
import { predictedBoard, type TrialMean, trialMeans, weighedBy } from "#engine/planning/trial";
import { worldsAsked } from "#engine/planning/worldsAsked";
import { effectiveNumber } from "#engine/worlds/effectiveNumber";
import { ensemble, type World } from "#engine/worlds/ensemble";
import { weightedMean } from "#engine/worlds/weightedMean";
import type { Executor } from "./executor.ts";
import { runPlan } from "./planTask.ts";

/** What was seen with one finish, and where the worlds have it arrive: before they were weighed by the trial, and after. */
export interface TrialOfFinish extends TrialMean {
  readonly before: Interval | null;
  readonly after: Interval | null;
}

/** A trial held against the worlds. */
export interface TrialInWorlds {
  readonly finishes: readonly TrialOfFinish[];
  readonly ensemble: string;
  readonly effectiveBefore: number;
  readonly effectiveAfter: number;
  /** Too few said it: each world was asked on its further nights too, so that more may count after than before. */
  readonly furtherNights: boolean;
  /** So few worlds say what was seen that what follows is rough. */
  readonly isThin: boolean;
}

export interface TrialReport {
  readonly finishes: readonly TrialOfFinish[];
  /** Null without a job: without ball, bowler and line there is nothing to hold it against. */
  readonly worlds: (Omit<TrialInWorlds, "finishes"> & { readonly pickBefore: string | null; readonly pickAfter: string | null }) | null;
}

/** With fewer worlds than this a weighed answer is rough. */
const ROUGH_BELOW = 50;

/** @throws EngineFault where the job names no line */
export async function trialReport(shots: readonly TrialShot[], question: PlanQuestion | null, executor: Executor): Promise<TrialReport> {
  if (question === null) {
    const alone = { trial: shots, line: { laydownBoard: 20, launchAngleDeg: 0 }, bowler: STYLES.matched };
    return { finishes: trialMeans(alone).map((seen) => ({ ...seen, before: null, after: null })), worlds: null };
  }
  const { finishes, ...held } = trialInWorlds(question);
  const [without, withTrial] = await Promise.all([runPlan({ ...question, trial: [] }, { executor }), runPlan(question, { executor })]);
  return { finishes, worlds: { ...held, pickBefore: without.pick?.finish ?? null, pickAfter: withTrial.pick?.finish ?? null } };
}

/** The question's trial against the worlds: some seconds, where few of them say it. @throws EngineFault where no line is named */
export function trialInWorlds(question: PlanQuestion): TrialInWorlds {
  const means = trialMeans(question);
  const { own: worlds } = worldsAsked(question);
  const before = worlds.map(({ weight }) => weight);
  const all = weighedBy(question);
  const weighed = all.filter(({ weight }) => weight > NOTHING);
  const after = weighed.map(({ weight }) => weight);
  return {
    finishes: means.map((seen) => {
      const boardIn = (world: World) => predictedBoard(groundIn(world, question), seen.finish);
      return {
        ...seen,
        before: over(worlds.map(boardIn), before),
        after: over(
          weighed.map(({ world }) => boardIn(world)),
          after,
        ),
      };
    }),
    ensemble: ensemble().digest,
    effectiveBefore: effectiveNumber(before),
    effectiveAfter: effectiveNumber(after),
    furtherNights: all.length > worlds.length,
    isThin: effectiveNumber(after) < ROUGH_BELOW,
  };
}

/** Against the likeliest: what weighs less moves no figure that is told. */
const NOTHING = 1e-4;

function over(values: readonly number[], weights: readonly number[]): Interval {
  const value = weightedMean(values, weights);
  return { value, ...band(values, value, weights) };
}
