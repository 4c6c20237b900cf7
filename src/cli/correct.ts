import { correctFileSchema, jobHouseOf, type ResolvedCorrection, resolveCorrection } from "#contract/correctFile";
import { type CorrectionRun, correct as learn } from "#engine/learning/house/correct";
import { type Misfit, misfitOf } from "#engine/learning/house/misfit";
import { type NextShot, nextShots } from "#engine/learning/house/nextShot";
import type { Parameter } from "#engine/learning/house/parameters";
import { WORLDS } from "#engine/planning/worldCounts";
import { programVersion } from "#server/version";
import { type PlanChange, planChanges } from "#tasks/planChanges";
import { correctText } from "./correctText.ts";
import type { Options } from "./options.ts";
import { readChecked } from "./readJob.ts";
import { withExecutor } from "./withExecutor.ts";
import type { ExitCode, World } from "./world.ts";

/** `gritwright correct FILE`: what the shots seen in a house say of it, and what that does to the plans. */
export async function correct(file: string, options: Options, world: World): Promise<ExitCode> {
  const read = await readChecked(file, correctFileSchema);
  const resolved = resolveCorrection(options.seed === null ? read : { ...read, seed: options.seed });
  const run = learn(resolved.question);
  const next = nextShots(run, resolved.question.eye);
  const misfit = misfitOf(run, resolved.question);
  const plans = await withExecutor(options.workers ?? world.workers, (executor) => planChanges(resolved, run, executor, WORLDS.final));
  world.print(
    options.json
      ? `${JSON.stringify(documentOf(run, misfit, next, plans, resolved), null, 2)}\n`
      : correctText(run, misfit, next, plans, resolved),
  );
  return 0;
}

function documentOf(
  { correction }: CorrectionRun,
  misfit: Misfit,
  next: readonly NextShot[],
  plans: readonly PlanChange[],
  { names, handNames, defaults }: ResolvedCorrection,
) {
  const { house: _, parameters, tied, untold, beyond, ...told } = correction;
  const idOf = ({ id, hand }: Parameter): string => (hand === null || handNames.length === 1 ? id : `${id} of ${handNames[hand]}`);
  return {
    gritwright: 1,
    kind: "correct",
    engineVersion: programVersion(),
    ...told,
    parameters: parameters.map(({ hand, ...one }) => ({ ...one, bowler: hand === null ? null : handNames[hand] })),
    tied: tied.map(({ pair: [a, b], correlation }) => ({ pair: [idOf(a), idOf(b)], correlation })),
    untold: untold.map(idOf),
    beyond: beyond.map(idOf),
    misfit: { ...misfit, kinds: misfit.kinds.map(({ situation, ...kind }) => ({ ...kind, ball: names[situation] })) },
    nextShots: next.map(({ tells, ...shot }) => ({ ...shot, tells: idOf(tells), ball: names[shot.situation] })),
    plans: plans.map(({ ball, before, after }) => ({ ball, before: before.pick, after: after.pick })),
    house: jobHouseOf(correction),
    defaults,
  };
}
