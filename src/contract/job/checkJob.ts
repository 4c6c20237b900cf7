import type { z } from "zod";
import { dotted, firstOf, MOST_PROBLEMS, mustBeModest, shortened } from "../modest.ts";
import { nearestWord } from "../nearest.ts";
import { JobFault, type JobProblem, PROBLEM_IDS, type ProblemId } from "../problem.ts";
import { type CheckedJob, JOB_FILE_VERSION, jobFileSchema } from "./jobFile.ts";

type Issue = z.core.$ZodIssue;

/** @throws {JobFault} code `invalid`, with every problem found in what stands in a job file */
export function checkJob(data: unknown): CheckedJob {
  return checkFile(jobFileSchema, data);
}

/**
 * Checks what stands in a file against its schema. Takes time by the size of the data, whatever stands in it.
 *
 * @param data what the file's text says, as plain values
 * @throws {JobFault} `invalid`, with the first twenty problems and how many more there are; also where there is more of it than in anything that is
 *   meant well; `syntax` where it is nested too deep
 */
export function checkFile<Schema extends z.ZodType>(schema: Schema, data: unknown): z.output<Schema> {
  mustBeModest(data);
  const result = schema.safeParse(data, { reportInput: true });
  if (result.success) return result.data;
  throw new JobFault("invalid", told(result.error.issues, data));
}

/** A value can break two rules of one kind; it is told once. What is only counted is not put into words. */
function told(issues: readonly Issue[], data: unknown): JobProblem[] {
  const problems: JobProblem[] = [];
  const seen = new Set<string>();
  for (const issue of issues) {
    const known = issue.code === "unrecognized_keys" ? issue.message.split(", ") : [];
    for (const path of pathsOf(issue)) {
      const key = `${JSON.stringify(path)}\n${issue.message}`;
      if (seen.has(key)) continue;
      seen.add(key);
      if (problems.length < MOST_PROBLEMS) problems.push(problemOf(issue, path, known, data));
    }
  }
  return firstOf(problems, seen.size);
}

/** Where it is: an unknown key each by itself. */
function pathsOf(issue: Issue): readonly (readonly PropertyKey[])[] {
  return issue.code === "unrecognized_keys" ? issue.keys.map((key) => [...issue.path, key]) : [issue.path];
}

function problemOf(issue: Issue, path: readonly PropertyKey[], known: readonly string[], data: unknown): JobProblem {
  const value = valueAt(data, path);
  const about = { path: dotted(path), value, allowed: issue.message };
  if (issue.code !== "unrecognized_keys") return { ...about, reason: reasonOf(issue, value) };
  const [key, nearest] = [shortened(path[path.length - 1]), nearestWord(String(path[path.length - 1]), known)];
  return { ...about, reason: { id: "unknownKey", params: nearest === null ? { key } : { key, nearest } } };
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
