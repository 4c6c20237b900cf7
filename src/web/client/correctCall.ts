import { correctFileSchema, jobHouseOf, resolveCorrection } from "#contract/correctFile";
import { checkFile } from "#contract/job/checkJob";
import { JobFault } from "#contract/problem";
import { EngineFault } from "#engine/fault";
import { correct } from "#engine/learning/house/correct";
import { misfitOf } from "#engine/learning/house/misfit";
import { nextShots } from "#engine/learning/house/nextShot";
import { WORLDS } from "#engine/planning/worldCounts";
import { inlineExecutor } from "#tasks/inlineExecutor";
import { chanceChange, planChanges } from "#tasks/planChanges";
import { fieldProblem } from "./planRequest.ts";
import type { HouseAnswer } from "./protocol.ts";

/** What the shots of a file tell of the house, and what that does to the plans of their balls; or what is wrong with the file. */
export async function houseAnswer(file: unknown): Promise<HouseAnswer> {
  try {
    const resolved = resolveCorrection(checkFile(correctFileSchema, file));
    const run = correct(resolved.question);
    const { correction } = run;
    const { house: _, ...told } = correction;
    const house = jobHouseOf(correction);
    return {
      kind: "told",
      correction: told,
      handNames: resolved.handNames,
      misfit: misfitOf(run, resolved.question),
      kindNames: resolved.names,
      house,
      next: nextShots(run, resolved.question.eye).map((shot) => ({ ball: resolved.names[shot.situation], shot })),
      plans: (await planChanges(resolved, run, inlineExecutor, WORLDS.first)).map((change) => ({
        ball: change.ball,
        before: change.before.pick?.finish ?? null,
        after: change.after.pick?.finish ?? null,
        change: chanceChange(change),
      })),
    };
  } catch (error) {
    if (error instanceof JobFault || error instanceof EngineFault)
      return { kind: "problems", problems: error.problems.map((problem) => fieldProblem(problem)) };
    throw error;
  }
}
