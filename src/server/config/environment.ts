import { z } from "zod";
import { nearestWord } from "#contract/nearest";
import { JobFault, type JobProblem } from "#contract/problem";
import { withoutPassword } from "#records/database/address";
import { configSchema } from "./configSchema.ts";

const PREFIX = "GRITWRIGHT_";
/** Variables with our prefix that are no configuration: the file that holds it, and what the tests' tools hand on. */
const OTHERS = new Set([`${PREFIX}CONFIG`, `${PREFIX}TEST_PORT`]);

/** A key of the configuration and the variable that sets it: `limits.fileMb` and `GRITWRIGHT_LIMITS_FILE_MB`. */
export interface Variable {
  readonly name: string;
  readonly path: readonly string[];
  readonly holds: "text" | "list" | "plain";
}

/** Every variable there is, from the schema itself. */
export const VARIABLES: readonly Variable[] = variablesOf(configSchema, []);

function variablesOf(schema: z.ZodObject, above: readonly string[]): Variable[] {
  return Object.entries(schema.shape).flatMap(([key, field]) => {
    const inner = field instanceof z.ZodOptional ? field.unwrap() : field;
    const path = [...above, key];
    if (inner instanceof z.ZodObject) return variablesOf(inner, path);
    return [{ name: PREFIX + path.map(shouted).join("_"), path, holds: holdsOf(inner) }];
  });
}

function holdsOf(field: unknown): Variable["holds"] {
  if (field instanceof z.ZodArray) return "list";
  return field instanceof z.ZodString || field instanceof z.ZodEnum ? "text" : "plain";
}

/** `fileMb` as `FILE_MB`. */
function shouted(key: string): string {
  return key.replace(/[A-Z]/g, (letter) => `_${letter}`).toUpperCase();
}

/**
 * What the environment says of the configuration, as nested plain values; numbers and true/false are read, the rest is left for the check.
 *
 * @throws {JobFault} for a variable that begins like ours and is none: a misspelt one would otherwise be ignored in silence
 */
export function fromEnvironment(environment: Readonly<Record<string, string | undefined>>): Record<string, unknown> {
  const problems: JobProblem[] = [];
  const values: Record<string, unknown> = {};
  for (const [name, text] of Object.entries(environment)) {
    if (!name.startsWith(PREFIX) || OTHERS.has(name) || text === undefined) continue;
    const variable = VARIABLES.find((known) => known.name === name);
    if (variable === undefined) problems.push(unknownVariable(name, text));
    else setAt(values, variable.path, readAs(variable, text));
  }
  if (problems.length > 0) throw new JobFault("invalid", problems);
  return values;
}

function unknownVariable(name: string, value: string): JobProblem {
  const names = VARIABLES.map((known) => known.name);
  const nearest = nearestWord(name, names);
  return {
    path: name,
    // A misspelt name may stand before an address.
    value: withoutPassword(value),
    allowed: names.join(", "),
    reason: { id: "unknownKey", params: nearest === null ? { key: name } : { key: name, nearest } },
  };
}

/** A list is written with commas. */
function readAs({ holds }: Variable, text: string): unknown {
  if (holds === "list") return text.split(",").map((one) => one.trim());
  return holds === "text" ? text : plainValue(text);
}

function plainValue(text: string): unknown {
  if (text === "true" || text === "false") return text === "true";
  const number = Number(text);
  return text.trim() === "" || Number.isNaN(number) ? text : number;
}

/** Sets a value in nested plain values. */
export function setAt(values: Record<string, unknown>, [key, ...below]: readonly string[], value: unknown): void {
  if (below.length === 0) {
    values[key] = value;
    return;
  }
  const inner = (values[key] ?? {}) as Record<string, unknown>;
  values[key] = inner;
  setAt(inner, below, value);
}
