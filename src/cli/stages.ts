import {
  type BenchFile,
  type BenchFileBall,
  benchBallOf,
  benchFileSchema,
  findingsOf,
  habitsOf,
  ownCutOf,
  recipeOf,
} from "#contract/bench/benchFile";
import { type BatchStop, planBatch } from "#engine/surface/batch";
import { finishText } from "#engine/surface/finish";
import { checkRecipe } from "#engine/surface/recipe";
import { planStages } from "#engine/surface/stages";
import { programVersion } from "#server/version";
import type { Options } from "./options.ts";
import { readChecked } from "./readJob.ts";
import { type PlannedWork, stagesText } from "./stagesText.ts";
import type { ExitCode, World } from "./world.ts";

/** `gritwright stages FILE`: the bench work of one ball or a batch. */
export async function stages(file: string, options: Options, world: World): Promise<ExitCode> {
  const asked = await readChecked(file, benchFileSchema);
  const works = asked.balls.map((ball, i) => workOf(ball, i, asked));
  const batch = works.length > 1 ? planBatch(works.map(({ plan }) => plan)) : [];
  const cut = asked.bench?.cutReadings ? ownCutOf(asked.bench.cutReadings) : null;
  world.print(options.json ? `${JSON.stringify({ ...documentOf(works, batch), ownCut: cut }, null, 2)}\n` : stagesText(works, batch, cut));
  return 0;
}

function workOf(asked: BenchFileBall, index: number, file: BenchFile): PlannedWork {
  const habits = habitsOf(file);
  const ball = benchBallOf(asked);
  const { wanted } = asked;
  const recipe = recipeOf(asked, habits);
  return {
    name: asked.ball.name ?? `Ball ${index + 1}`,
    wanted: finishText(wanted),
    plan: planStages(ball, wanted, findingsOf(asked), habits),
    recipe: recipe && checkRecipe(ball, wanted, recipe),
  };
}

function documentOf(works: readonly PlannedWork[], batch: readonly BatchStop[]) {
  return {
    gritwright: 1,
    kind: "stages",
    engineVersion: programVersion(),
    balls: works.map(({ plan, ...rest }) => ({ ...rest, ...plan })),
    batch,
  };
}
