import type { Problem } from "#engine/fault";
import type { Message } from "#engine/message";

/** Why a job file, or a place in it, cannot be used. The sentences are in `words/`. */
export const PROBLEM_IDS = [
  "notAllowed",
  "missing",
  "unknownKey",
  "wrongVersion",
  "notKnown",
  "wordFillsNothing",
  "onlyOneOf",
  "totalDisagrees",
  "notForPlan",
  "noBestLine",
  "noFile",
  "isFolder",
  "noAccess",
  "notWritten",
  "tooLarge",
  "empty",
  "notUtf8",
  "workbook",
  "notTable",
  "emptyTable",
  "syntax",
  "duplicateKey",
  "tooManyAliases",
  "tooDeep",
  "tooManyKeys",
  "tooManyValues",
  "more",
  "measuredFile",
  "usage",
] as const;
export type ProblemId = (typeof PROBLEM_IDS)[number];

/** What can be wrong with a measured file; the parameter `what` of `measuredFile`. */
export const MEASURED_FAULTS = [
  "notZip",
  "damaged",
  "tooManyEntries",
  "tooLarge",
  "noMainXml",
  "xml",
  "doctype",
  "checksum",
  "layers",
  "size",
  "axis",
  "uneven",
  "notANumber",
  "height",
  "columns",
  "unit",
  "records",
  "noPoints",
  "kind",
] as const;
export type MeasuredFault = (typeof MEASURED_FAULTS)[number];

/** A measured file that cannot be used: what is wrong, what stood there, what is allowed. */
export function measuredFault(what: MeasuredFault, value: unknown, allowed: string): JobFault {
  return wholeFileFault("invalid", "measuredFile", allowed, { what }, value);
}

/** A problem of a job file: where (dotted path, empty for the whole file), what stood there, what is allowed, and why. */
export interface JobProblem extends Problem {
  readonly reason: Message<ProblemId>;
}

/** `usage`: the command line itself; `unreadable`: no text to be had; `syntax`: neither YAML nor JSON; `invalid`: read, but not a usable job. */
export type JobFaultCode = "usage" | "unreadable" | "syntax" | "invalid";

/** The input cannot be used. Carries every problem found, not only the first. */
export class JobFault extends Error {
  readonly code: JobFaultCode;
  readonly problems: readonly JobProblem[];

  constructor(code: JobFaultCode, problems: readonly JobProblem[]) {
    super(problems.map((p) => `${p.path === "" ? code : p.path}: ${p.reason.id}, allowed: ${p.allowed}`).join("; "));
    this.name = "JobFault";
    this.code = code;
    this.problems = problems;
  }
}

/** A fault of one problem that concerns the whole input rather than a field of it. */
export function wholeFileFault(
  code: JobFaultCode,
  id: ProblemId,
  allowed: string,
  params: Message["params"] = {},
  value: unknown = null,
): JobFault {
  return new JobFault(code, [{ path: "", value, allowed, reason: { id, params } }]);
}

/** Problems that the engine found in a question, as problems of the job file it was made from. */
export function fromEngine(problems: readonly Problem[]): JobProblem[] {
  return problems.map((problem) => ({
    ...problem,
    path: problem.path.replace(/\.(\d+)(?=\.|$)/g, "[$1]"),
    reason: { id: "notAllowed", params: {} },
  }));
}
