import { checkJob } from "#contract/job/checkJob";
import { JobFault } from "#contract/problem";
import { resolvePlan } from "#contract/resolve/question";
import { EngineFault } from "#engine/fault";
import { trialInWorlds } from "#tasks/trialReport";
import { fieldProblem } from "./planRequest.ts";
import type { TrialAnswer } from "./protocol.ts";

/** The trial of a job as it stands in the form, against the worlds; or what is wrong with the job. */
export function trialAnswer(job: unknown): TrialAnswer {
  try {
    return { kind: "told", trial: trialInWorlds(resolvePlan(checkJob(job)).question) };
  } catch (error) {
    if (error instanceof JobFault || error instanceof EngineFault)
      return { kind: "problems", problems: error.problems.map((problem) => fieldProblem(problem)) };
    throw error;
  }
}
