import type { z } from "zod";
import { nearestWord } from "../nearest.ts";
import { JobFault, type JobProblem, PROBLEM_IDS, type ProblemId } from "../problem.ts";
import { type CheckedJob, JOB_FILE_VERSION, jobFileSchema } from "./jobFile.ts";

type Issue = z.core.$ZodIssue;

/** @throws {JobFault} code `invalid`, with every problem found in what stands in a job file */
export function checkJob(data: unknown): CheckedJob {
  return checkFile(jobFileSchema, data);
}

/**
 * Checks what stands in a file against its schema.
 *
 * @param data what the file's text says, as plain values
 * @throws {JobFault} code `invalid`, with every problem found
 */
export function checkFile<Schema extends z.ZodType>(schema: Schema, data: unknown): z.output<Schema> {
  const result = schema.safeParse(data, { reportInput: true });
  if (result.success) return result.data;
  throw new JobFault("invalid", withoutRepeats(result.error.issues.flatMap((issue) => problemsOf(issue, data))));
}

/** A value can break two rules of one kind; it is told once. */
function withoutRepeats(problems: readonly JobProblem[]): JobProblem[] {
  const key = ({ path, allowed, reason }: JobProblem) => `${path}\n${allowed}\n${reason.id}`;
  return problems.filter((problem, i) => problems.findIndex((other) => key(other) === key(problem)) === i);
}

function problemsOf(issue: Issue, data: unknown): JobProblem[] {
  if (issue.code === "unrecognized_keys") return issue.keys.map((key) => unknownKey(key, issue, data));
  const value = valueAt(data, issue.path);
  return [{ path: dotted(issue.path), value, allowed: issue.message, reason: reasonOf(issue, value) }];
}

function unknownKey(key: string, issue: Issue, data: unknown): JobProblem {
  const path = [...issue.path, key];
  const nearest = nearestWord(key, issue.message.split(", "));
  return {
    path: dotted(path),
    value: valueAt(data, path),
    allowed: issue.message,
    reason: { id: "unknownKey", params: nearest === null ? { key } : { key, nearest } },
  };
}

function reasonOf(issue: Issue, value: unknown): JobProblem["reason"] {
  if (issue.path[0] === "gritwright" && value !== undefined) return { id: "wrongVersion", params: { version: JOB_FILE_VERSION } };
  if (value === undefined) return { id: "missing", params: {} };
  if (issue.code === "custom") return { id: statedReason(issue.params), params: {} };
  if (issue.code !== "invalid_value" || typeof value !== "string") return { id: "notAllowed", params: {} };
  const nearest = nearestWord(value, issue.values.map(String));
  return { id: "notKnown", params: nearest === null ? {} : { nearest } };
}

function statedReason(params: Record<string, unknown> | undefined): ProblemId {
  return PROBLEM_IDS.find((id) => id === params?.reason) ?? "notAllowed";
}

function valueAt(data: unknown, path: readonly PropertyKey[]): unknown {
  return path.reduce<unknown>((at, key) => (typeof at === "object" && at !== null ? Reflect.get(at, key) : undefined), data);
}

/** `lane.oilSheet.passes[2].toFt` */
function dotted(path: readonly PropertyKey[]): string {
  return path.reduce<string>(
    (text, key) => (typeof key === "number" ? `${text}[${key}]` : text === "" ? String(key) : `${text}.${String(key)}`),
    "",
  );
}
