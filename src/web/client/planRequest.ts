import { checkJob } from "#contract/job/checkJob";
import { JobFault } from "#contract/problem";
import { resolvePlan } from "#contract/resolve/question";
import { EngineFault, type Problem } from "#engine/fault";
import { candidatesOf } from "#engine/planning/candidates";
import { readJobText } from "#exchange/jobFileText";
import { PLAN_FORM } from "#words/en/screens";
import { problemText } from "#words/problemText";
import { isJobDraft } from "../jobFile/jobDraft.ts";
import type { FieldProblem, PlanRequest, ReadJob } from "./protocol.ts";

/** Reads a job as it stands in the form: every problem at once, or the question with the defaults that were taken. */
export function planRequest(job: unknown): PlanRequest {
  try {
    const { question, defaults } = resolvePlan(checkJob(job));
    candidatesOf(question);
    return { kind: "question", question, defaults };
  } catch (error) {
    if (error instanceof JobFault || error instanceof EngineFault)
      return { kind: "problems", problems: error.problems.map((p) => fieldProblem(p)) };
    throw error;
  }
}

/** Reads a job file, YAML or JSON. What it means is looked at when it stands in the form. */
export function readJob(bytes: Uint8Array): ReadJob {
  try {
    const job = readJobText(bytes);
    if (isJobDraft(job)) return { kind: "job", job };
    return { kind: "unreadable", sentences: [PLAN_FORM.noMapping] };
  } catch (error) {
    if (error instanceof JobFault) return { kind: "unreadable", sentences: error.problems.map((p) => problemText(p)) };
    throw error;
  }
}

export function fieldProblem(problem: Problem): FieldProblem {
  const { path, value, allowed } = problem;
  return {
    path,
    allowed,
    value: value === undefined || value === null ? "" : typeof value === "object" ? JSON.stringify(value).slice(0, 60) : String(value),
  };
}
