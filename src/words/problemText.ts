import type { Problem } from "#engine/fault";
import type { Message } from "#engine/message";
import { PROBLEM_SENTENCES } from "./en/problems.ts";
import { Params } from "./params.ts";

/** Longest part of a wrong value that is quoted back. */
const MOST_QUOTED = 60;

/**
 * The sentence about one problem of an input, with its place in front: `bowler.speedMph: 0 is not allowed here. Allowed: 0 < x ≤ 40 mph.`
 *
 * @throws {TypeError} if there is no sentence for the problem's reason
 */
export function problemText(problem: Problem & { readonly reason: Message }): string {
  const sentence = Object.entries(PROBLEM_SENTENCES).find(([id]) => id === problem.reason.id)?.[1];
  if (sentence === undefined) throw new TypeError(`no sentence for the problem "${problem.reason.id}"`);
  const text = sentence({ value: quoted(problem.value), allowed: problem.allowed, params: new Params(problem.reason) });
  return problem.path === "" ? text : `${problem.path}: ${text}`;
}

function quoted(value: unknown): string {
  const text = typeof value === "string" ? `"${value}"` : (JSON.stringify(value) ?? String(value));
  return text.length <= MOST_QUOTED ? text : `${text.slice(0, MOST_QUOTED)}…`;
}
