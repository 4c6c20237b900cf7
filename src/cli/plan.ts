import { type Resolved, resolvePlan } from "#contract/resolve/question";
import { laneChart } from "#drawing/laneChart";
import type { FinishPlan } from "#engine/planning/plan";
import type { PlanQuestion } from "#engine/planning/question";
import { WORLDS } from "#engine/planning/worldCounts";
import { planDocumentOf } from "#server/plans/planDocumentOf";
import { programVersion } from "#server/version";
import { type PlanProgress, runPlan } from "#tasks/planTask";
import type { Options } from "./options.ts";
import { planChart } from "./planChart.ts";
import { planText } from "./planText.ts";
import { progressOn } from "./progress.ts";
import { readJob } from "./readJob.ts";
import { withExecutor } from "./withExecutor.ts";
import type { ExitCode, World } from "./world.ts";
import { writePicture } from "./writePicture.ts";

/** `gritwright plan FILE`: the finish plan of a job file. */
export async function plan(file: string, options: Options, world: World): Promise<ExitCode> {
  const job = await readJob(file);
  const asked = resolvePlan(options.seed === null ? job : { ...job, seed: options.seed });
  const onProgress = progressOn(world, STAGES);
  const worlds = options.worlds ?? WORLDS.final;
  const found = await withExecutor(options.workers ?? world.workers, (executor) =>
    runPlan(asked.question, { executor, onProgress, worlds }),
  );
  if (options.svg !== null) await writePicture(options.svg, laneChart(planChart(asked.question, found)), world);
  world.print(options.json ? `${JSON.stringify(planDocumentOf(found, asked, programVersion()), null, 2)}\n` : text(found, asked));
  return 0;
}

function text(found: FinishPlan, { question, defaults }: Resolved<PlanQuestion>): string {
  return planText(found, question, defaults);
}

const STAGES: Readonly<Record<PlanProgress["stage"], string>> = {
  sketch: "a first look at the fresh lane",
  session: "the whole session",
  draws: "how sure it is, in other worlds",
};
