import type { CorrectionRun } from "#engine/learning/house/correct";
import { plansOf, type Taught } from "#engine/learning/house/plansOf";
import type { FinishPlan } from "#engine/planning/plan";
import type { Executor } from "./executor.ts";
import { runPlan } from "./planTask.ts";

/** What the finish plan of a ball is without and with what a house has taught. */
export interface PlanChange {
  readonly ball: string;
  readonly before: FinishPlan;
  readonly after: FinishPlan;
}

/** The plans of the balls that were seen, before and after, over so many worlds. */
export async function planChanges(
  taught: Taught,
  { correction }: CorrectionRun,
  executor: Executor,
  worlds: number,
): Promise<readonly PlanChange[]> {
  const run = { executor, worlds };
  return Promise.all(
    plansOf(taught, correction.house).map(async ({ ball, ...asked }) => {
      const [before, after] = await Promise.all([runPlan(asked.before, run), runPlan(asked.after, run)]);
      return { ball, before, after };
    }),
  );
}

/** How much likelier a ball's first shot strikes with the pick, by the new plan against the old; of the best where there is no pick. */
export function chanceChange({ before, after }: Pick<PlanChange, "before" | "after">): number {
  return chanceOf(after) - chanceOf(before);
}

function chanceOf({ pick, candidates }: FinishPlan): number {
  const picked = candidates.find(({ finish }) => finish === pick?.finish);
  return picked?.chance?.value ?? Math.max(0, ...candidates.map(({ chance }) => chance?.value ?? 0));
}
