import { isDeepStrictEqual } from "node:util";
import type { z } from "zod";
import type { Fields } from "./definition.ts";

/*
 * Fields that a newer program wrote and this one does not know: left out when a thing is read, put back when it is written.
 */

/** The same without the keys that a schema does not know; null where that is not all that is wrong. */
export function withoutKeys(whole: Fields, issues: readonly z.core.$ZodIssue[]): Fields | null {
  if (issues.some(({ code }) => code !== "unrecognized_keys")) return null;
  const known = structuredClone(whole);
  for (const issue of issues) {
    if (issue.code !== "unrecognized_keys") continue;
    const at = issue.path.reduce<unknown>((inside, key) => Reflect.get(inside as object, key), known);
    for (const key of issue.keys) Reflect.deleteProperty(at as object, key);
  }
  return known;
}

/**
 * What is written now, with what was not known put back where it stood: into the same mapping, and into the same item of a list, also where others came
 * before it or went. What stood in an item that is gone goes with it.
 *
 * @param whole as it lay there, with what is not known
 * @param known the same as it was read
 * @param next what is written now
 */
export function withUnknown(whole: Fields, known: Fields, next: Fields): Fields {
  return merged(whole, known, next) as Fields;
}

function merged(whole: unknown, known: unknown, next: unknown): unknown {
  if (Array.isArray(whole) && Array.isArray(known) && Array.isArray(next)) return mergedItems(whole, known, next);
  if (!isMapping(whole) || !isMapping(known) || !isMapping(next)) return next;
  const put: Fields = { ...next };
  for (const [key, value] of Object.entries(whole)) {
    if (!Object.hasOwn(known, key)) put[key] ??= value;
    else if (Object.hasOwn(next, key)) put[key] = merged(value, known[key], next[key]);
  }
  return put;
}

function mergedItems(whole: readonly unknown[], known: readonly unknown[], next: readonly unknown[]): unknown[] {
  const places = new Map(known.map((item, i) => [JSON.stringify(item), i]));
  const found = next.map((item, i) => (isDeepStrictEqual(item, known[i]) ? i : places.get(JSON.stringify(item))));
  const taken = new Set(found);
  return next.map((item, i) => {
    // One that is nowhere any more was changed where it stands.
    const place = found[i] ?? (taken.has(i) ? undefined : i);
    return place === undefined ? item : merged(whole[place], known[place], item);
  });
}

function isMapping(value: unknown): value is Fields {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
