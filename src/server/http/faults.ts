import { firstOf, MOST_PROBLEMS } from "#contract/modest";
import { fromEngine, JobFault, type JobProblem } from "#contract/problem";
import { RecordsFault, type RecordsFaultKind } from "#contract/records/fault";
import type { FieldProblem } from "#contract/routes/problemDocument";
import type { ProblemKind } from "#contract/routes/problemKinds";
import { EngineFault } from "#engine/fault";
import { problemText } from "#words/problemText";
import { Refusal } from "./refusal.ts";

/** What is wrong, field by field, with the sentence of the catalogue. */
export function fieldProblems(fault: JobFault | EngineFault): FieldProblem[] {
  const problems = fault instanceof JobFault ? fault.problems : fromEngine(fault.problems);
  return problems.map(fieldProblem);
}

/** Longest value that is sent back, in letters of JSON. */
const LONGEST_VALUE = 1000;

function fieldProblem(problem: JobProblem): FieldProblem {
  // A value that is not there has no JSON.
  const value = problem.value ?? null;
  const text = JSON.stringify(value);
  const sent = text.length <= LONGEST_VALUE ? value : `${text.slice(0, LONGEST_VALUE)}…`;
  return { path: problem.path, value: sent, allowed: problem.allowed, message: problemText({ ...problem, value }) };
}

/** The refusal that an error amounts to; null for a fault of ours. */
export function refusalOf(error: unknown): Refusal | null {
  if (error instanceof Refusal) return error;
  if (error instanceof JobFault && error.code === "syntax")
    return new Refusal("notRead", { detail: error.problems.map(problemText).join(" "), problems: fieldProblems(error) });
  if (error instanceof JobFault || error instanceof EngineFault) return new Refusal("invalid", { problems: fieldProblems(error) });
  return error instanceof RecordsFault ? refusalOfRecords(error) : null;
}

const KINDS: Readonly<Record<RecordsFaultKind, ProblemKind>> = {
  notFound: "notFound",
  changedMeanwhile: "changedMeanwhile",
  refused: "invalid",
  keyReused: "keyReused",
  busy: "busy",
  readOnly: "notWritable",
  full: "notWritable",
  damaged: "damaged",
  unreadable: "damaged",
  newerSchema: "damaged",
  newerWriter: "notWritable",
  frozen: "notWritable",
  notReachable: "busy",
  folderGone: "folderGone",
  badBackup: "damaged",
};

/** `about` stays here: for a key or a path it is nobody's business over the wire. */
function refusalOfRecords(fault: RecordsFault): Refusal {
  const { kind, current } = fault;
  if (kind === "changedMeanwhile") return new Refusal(KINDS[kind], { current });
  return new Refusal(KINDS[kind], { detail: DETAILS[kind], ...(fault.problems.length === 0 ? {} : { problems: recordsProblems(fault) }) });
}

const DETAILS: Readonly<Record<Exclude<RecordsFaultKind, "changedMeanwhile">, string>> = {
  notFound: "It is not in the records.",
  refused: "Nothing was written.",
  keyReused: "A retry sends the same request with its key; another request has a key of its own.",
  busy: "Another program is writing; try again.",
  readOnly: "The folder of the records is read-only.",
  full: "The disk is full; nothing of this was written.",
  damaged: "A file of the records is damaged. Restore a backup.",
  unreadable: "This entry cannot be read and has been set aside. Everything else goes on; the owner finds it in the room Shop.",
  newerSchema: "The records were written by a newer version of this program.",
  newerWriter: "A newer version of the program has written here and asks older ones only to read. Start the newer version.",
  frozen: "The records have been moved elsewhere.",
  notReachable: "The database does not answer; try again.",
  folderGone:
    "Somebody has moved or deleted the folder of the records. Nothing is written. Put it back, or stop the program and restore a backup.",
  badBackup: "This backup is damaged or is none.",
};

/** What the records refuse, field by field: the first problems, and how many more there are. */
export function recordsProblems({ problems }: RecordsFault): FieldProblem[] {
  return firstOf(
    problems.slice(0, MOST_PROBLEMS).flatMap((problem) => fromEngine([problem])),
    problems.length,
  ).map(fieldProblem);
}
