import type { z } from "zod";
import type { ThingKind } from "#contract/records/auditEntry";
import { RecordsFault } from "#contract/records/fault";
import type { Kept } from "#contract/records/fields";
import type { Problem } from "#engine/fault";
import type { ThingRow } from "../database/tables.ts";
import { schemaVersionOf, upgraded } from "../upgrades/upgrade.ts";
import type { Definition, Fields } from "./definition.ts";
import { withoutKeys, withUnknown } from "./unknownFields.ts";

const KEPT_FIELDS = new Set(["id", "shopId", "version", "createdAt", "changedAt"]);

/** A thing as it lies in its row, and what a newer program wrote into it that this one does not know. */
export interface ReadRow<Thing> {
  readonly thing: Thing;
  /** The whole body, where there is something unknown in it; null otherwise. */
  readonly whole: Fields | null;
  readonly schemaVersion: number;
}

/**
 * The thing in a row. What an older program wrote is upgraded; fields that this program does not know are left out, and kept for when it is written again.
 *
 * @throws {RecordsFault} `unreadable`
 */
export function readRow<Thing extends Kept>({ kind, kept }: Definition<Thing>, row: ThingRow): ReadRow<Thing> {
  const { id, shopId, version, createdAt, changedAt, schemaVersion } = row;
  const body = upgraded(kind, bodyOf(row, kind), schemaVersion);
  const whole = { ...body, id, shopId, version, createdAt, changedAt };
  const read = kept.safeParse(whole, { reportInput: true });
  if (read.success) return { thing: read.data, whole: null, schemaVersion };
  const known = withoutKeys(whole, read.error.issues);
  const again = known === null ? read : kept.safeParse(known, { reportInput: true });
  if (!again.success) throw unreadable(kind, id, problemsOf(again.error, whole));
  return { thing: again.data, whole: body, schemaVersion };
}

function bodyOf(row: ThingRow, kind: ThingKind): Fields {
  const body = fieldsIn(row.body);
  if (body !== null) return body;
  throw unreadable(kind, row.id, [{ path: "", value: null, allowed: "a JSON object" }]);
}

/** How often it is tried: a field that cannot be read may hide what is wrong beside it. */
const RESCUES = 3;

/**
 * A thing that nothing can be done without, with what stands for the fields that cannot be read; only to be looked at, never to be written. Null where its
 * kind has no such, or even that does not help.
 */
export function rescued<Thing extends Kept>({ kind, kept, rescue }: Definition<Thing>, row: ThingRow): Thing | null {
  if (rescue === undefined) return null;
  const { id, shopId, version, createdAt, changedAt, schemaVersion } = row;
  let whole: Fields = { ...upgraded(kind, fieldsIn(row.body) ?? {}, schemaVersion), id, shopId, version, createdAt, changedAt };
  for (let tries = 0; tries < RESCUES; tries += 1) {
    const read = kept.safeParse(whole);
    if (read.success) return read.data;
    const bad = new Set(read.error.issues.flatMap((issue) => (issue.code === "unrecognized_keys" ? issue.keys : [String(issue.path[0])])));
    const sound = Object.entries(whole).filter(([field]) => !bad.has(field));
    const given = Object.entries(rescue).filter(([field]) => bad.has(field));
    whole = Object.fromEntries([...sound, ...given]);
  }
  return null;
}

/** The fields of a row's body as they lie there, unchecked; null where it is no JSON object. */
export function fieldsIn(body: string): Fields | null {
  try {
    const fields: unknown = JSON.parse(body);
    return typeof fields === "object" && fields !== null && !Array.isArray(fields) ? (fields as Fields) : null;
  } catch {
    return null;
  }
}

function unreadable(kind: ThingKind, id: string, problems: readonly Problem[]): RecordsFault {
  return new RecordsFault("unreadable", `${kind} ${id}`, { problems });
}

/**
 * The row of a thing.
 *
 * @param before how the thing lay there, where it is changed: what this program does not know goes back in
 */
export function rowOf<Thing extends Kept>(
  { kind, lookups }: Definition<Thing>,
  thing: Thing,
  before: ReadRow<Thing> | null = null,
): ThingRow {
  const fields = thing as Fields & Kept;
  const { id, shopId, version, createdAt, changedAt } = thing;
  const known = ownFields(fields);
  const isPlain = before === null || before.whole === null;
  const body = isPlain ? known : withUnknown(before.whole, ownFields(before.thing as Fields & Kept), known);
  const columns = Object.fromEntries(Object.keys(lookups).map((field) => [field, (fields[field] ?? null) as string | null]));
  // What a newer program wrote stays its own.
  const schemaVersion = Math.max(schemaVersionOf(kind), before?.schemaVersion ?? 1);
  return { id, shopId, version, createdAt, changedAt, schemaVersion, body: JSON.stringify(body), ...columns };
}

function ownFields(fields: Fields): Fields {
  return Object.fromEntries(Object.entries(fields).filter(([field]) => !KEPT_FIELDS.has(field)));
}

/** What was written, checked. @throws {RecordsFault} `refused` with every problem */
export function checkedFields(schema: z.ZodType, value: unknown, about: string): Fields {
  const read = schema.safeParse(value, { reportInput: true });
  if (read.success) return read.data as Fields;
  throw new RecordsFault("refused", about, { problems: problemsOf(read.error, value) });
}

function problemsOf(error: z.ZodError, whole: unknown): Problem[] {
  return error.issues.flatMap((issue): Problem[] => {
    if (issue.code === "unrecognized_keys") return issue.keys.map((key) => problem([...issue.path, key], whole, issue.message));
    return [problem(issue.path, whole, issue.message)];
  });
}

function problem(path: readonly PropertyKey[], whole: unknown, allowed: string): Problem {
  const value = path.reduce<unknown>((at, key) => (typeof at === "object" && at !== null ? Reflect.get(at, key) : undefined), whole);
  return { path: path.map(String).join("."), value: value ?? null, allowed };
}
