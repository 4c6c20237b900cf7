import { checkJob } from "#contract/job/checkJob";
import type { JobFile } from "#contract/job/jobFile";
import { JobFault, type JobProblem } from "#contract/problem";

/** The least that a job file can say. */
export const LEAST_JOB: JobFile = { gritwright: 1, ball: { cover: "hybrid", finish: "2000" }, lane: { pattern: "medium-41" } };

/** Everything that checking finds wrong with it; empty if nothing. */
export function problemsOf(data: unknown, use: (job: ReturnType<typeof checkJob>) => unknown = (job) => job): readonly JobProblem[] {
  try {
    use(checkJob(data));
    return [];
  } catch (fault) {
    if (fault instanceof JobFault) return fault.problems;
    throw fault;
  }
}

export const pathsOf = (problems: readonly JobProblem[]): string[] => problems.map(({ path }) => path);
