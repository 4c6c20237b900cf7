import { correctFileSchema, jobHouseOf, type ResolvedCorrection, resolveCorrection } from "#contract/correctFile";
import { type CorrectionRun, correct as learn } from "#engine/learning/house/correct";
import { type NextShot, nextShots } from "#engine/learning/house/nextShot";
import { type PlanChange, planChanges } from "#engine/learning/house/planChanges";
import { programVersion } from "#server/version";
import { correctText } from "./correctText.ts";
import type { Options } from "./options.ts";
import { readChecked } from "./readJob.ts";
import type { ExitCode, World } from "./world.ts";

/** `gritwright correct FILE`: what the shots seen in a house say of it, and what that does to the plans. */
export async function correct(file: string, options: Options, world: World): Promise<ExitCode> {
  const read = await readChecked(file, correctFileSchema);
  const resolved = resolveCorrection(options.seed === null ? read : { ...read, seed: options.seed });
  const run = learn(resolved.question);
  const next = nextShots(run, resolved.question.eye);
  const plans = planChanges(resolved, run.correction.house);
  world.print(
    options.json ? `${JSON.stringify(documentOf(run, next, plans, resolved), null, 2)}\n` : correctText(run, next, plans, resolved),
  );
  return 0;
}

function documentOf(
  { correction }: CorrectionRun,
  next: readonly NextShot[],
  plans: readonly PlanChange[],
  { names, defaults }: ResolvedCorrection,
) {
  const { house: _, ...told } = correction;
  return {
    gritwright: 1,
    kind: "correct",
    engineVersion: programVersion(),
    ...told,
    nextShots: next.map((shot) => ({ ...shot, ball: names[shot.situation] })),
    plans: plans.map(({ ball, before, after }) => ({ ball, before: before.pick, after: after.pick })),
    house: jobHouseOf(correction),
    defaults,
  };
}
