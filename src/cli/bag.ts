import { bagFileSchema, resolveBag } from "#contract/bagFile";
import type { Resolved } from "#contract/resolve/question";
import { bagChart } from "#drawing/bagChart";
import type { BagPlan } from "#engine/planning/bag/bagPlan";
import type { BagQuestion } from "#engine/planning/bag/question";
import { programVersion } from "#server/version";
import { type BagProgress, runBag } from "#tasks/bagTask";
import { bagText } from "./bagText.ts";
import type { Options } from "./options.ts";
import { progressOn } from "./progress.ts";
import { readChecked } from "./readJob.ts";
import { withExecutor } from "./withExecutor.ts";
import type { ExitCode, World } from "./world.ts";
import { writePicture } from "./writePicture.ts";

/** `gritwright bag FILE`: which ball with which finish, at which stage of a session. */
export async function bag(file: string, options: Options, world: World): Promise<ExitCode> {
  const read = await readChecked(file, bagFileSchema);
  const asked = resolveBag(options.seed === null ? read : { ...read, seed: options.seed }, today(world));
  const onProgress = progressOn(world, STAGES);
  const plan = await withExecutor(options.workers ?? world.workers, (executor) => runBag(asked.question, { executor, onProgress }));
  if (options.svg !== null) await writePicture(options.svg, bagChart(plan), world);
  world.print(options.json ? `${JSON.stringify(documentOf(plan, asked), null, 2)}\n` : bagText(plan, asked));
  return 0;
}

function documentOf(plan: BagPlan, { defaults }: Resolved<BagQuestion>) {
  return { gritwright: 1, kind: "bag", engineVersion: programVersion(), ...plan, defaults };
}

function today(world: World): string {
  return new Date(world.now()).toISOString().slice(0, 10);
}

const STAGES: Readonly<Record<BagProgress["stage"], string>> = {
  oil: "the oil through the session",
  worth: "what every ball is worth on it",
  draws: "how sure that is",
};
