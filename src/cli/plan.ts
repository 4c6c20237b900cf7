import { type Resolved, resolvePlan } from "#contract/resolve/question";
import { laneChart } from "#drawing/laneChart";
import type { FinishPlan } from "#engine/planning/plan";
import type { PlanQuestion } from "#engine/planning/question";
import { computePool } from "#server/computePool";
import { planDocumentOf } from "#server/plans/planDocumentOf";
import { programVersion } from "#server/version";
import { inlineExecutor } from "#tasks/inlineExecutor";
import { type PlanProgress, runPlan } from "#tasks/planTask";
import type { Options } from "./options.ts";
import { planChart } from "./planChart.ts";
import { planText } from "./planText.ts";
import { progressOn } from "./progress.ts";
import { readJob } from "./readJob.ts";
import type { ExitCode, World } from "./world.ts";
import { writePicture } from "./writePicture.ts";

/** `gritwright plan FILE`: the finish plan of a job file. */
export async function plan(file: string, options: Options, world: World): Promise<ExitCode> {
  const job = await readJob(file);
  const asked = resolvePlan(options.seed === null ? job : { ...job, seed: options.seed });
  const found = await compute(asked.question, options.workers ?? world.workers, world);
  if (options.svg !== null) await writePicture(options.svg, laneChart(planChart(asked.question, found)));
  world.print(options.json ? `${JSON.stringify(planDocumentOf(found, asked, programVersion()), null, 2)}\n` : text(found, asked));
  return 0;
}

function text(found: FinishPlan, { question, defaults }: Resolved<PlanQuestion>): string {
  return planText(found, question, defaults);
}

async function compute(question: PlanQuestion, workers: number, world: World): Promise<FinishPlan> {
  const onProgress = progressOn(world, STAGES);
  if (workers === 1) return runPlan(question, { executor: inlineExecutor, onProgress });
  const pool = computePool(workers);
  try {
    return await runPlan(question, { executor: pool, onProgress });
  } finally {
    await pool.close();
  }
}

const STAGES: Readonly<Record<PlanProgress["stage"], string>> = {
  sketch: "a first look at the fresh lane",
  session: "the whole session",
  draws: "how sure it is",
};
