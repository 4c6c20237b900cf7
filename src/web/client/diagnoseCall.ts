import { complaintFileSchema, resolveComplaint } from "#contract/complaintFile";
import { checkFile } from "#contract/job/checkJob";
import { JobFault } from "#contract/problem";
import { EngineFault } from "#engine/fault";
import { diagnose } from "#engine/learning/diagnosis/diagnose";
import { fieldProblem } from "./planRequest.ts";
import type { Diagnosed } from "./protocol.ts";

/** What may be wrong, from a complaint as it stands in the form; or what is wrong with the form. */
export function diagnosed(file: unknown): Diagnosed {
  try {
    return { kind: "diagnosis", diagnosis: diagnose(resolveComplaint(checkFile(complaintFileSchema, file)).question) };
  } catch (error) {
    if (error instanceof JobFault || error instanceof EngineFault)
      return { kind: "problems", problems: error.problems.map((problem) => fieldProblem(problem)) };
    throw error;
  }
}
