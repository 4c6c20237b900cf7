import type { z } from "zod";
import type { ThingKind } from "#contract/records/auditEntry";
import { RecordsFault } from "#contract/records/fault";
import type { Kept } from "#contract/records/fields";
import type { Problem } from "#engine/fault";
import type { ThingRow } from "../database/tables.ts";
import type { Definition, Fields } from "./definition.ts";

const KEPT_FIELDS = new Set(["id", "shopId", "version", "createdAt", "changedAt"]);

/** @throws {RecordsFault} `damaged` where what lies in the database is not such a thing */
export function thingOf<Thing extends Kept>({ kind, kept }: Definition<Thing>, row: ThingRow): Thing {
  const { id, shopId, version, createdAt, changedAt } = row;
  const read = kept.safeParse({ ...bodyOf(row, kind), id, shopId, version, createdAt, changedAt });
  if (!read.success) throw new RecordsFault("damaged", `${kind} ${id}`, { cause: read.error });
  return read.data;
}

function bodyOf(row: ThingRow, kind: ThingKind): Fields {
  try {
    return JSON.parse(row.body);
  } catch (cause) {
    throw new RecordsFault("damaged", `${kind} ${row.id}`, { cause });
  }
}

export function rowOf<Thing extends Kept>({ lookups }: Definition<Thing>, thing: Thing): ThingRow {
  const fields = thing as Fields & Kept;
  const { id, shopId, version, createdAt, changedAt } = thing;
  const body = Object.fromEntries(Object.entries(fields).filter(([field]) => !KEPT_FIELDS.has(field)));
  const columns = Object.fromEntries(Object.keys(lookups).map((field) => [field, (fields[field] ?? null) as string | null]));
  return { id, shopId, version, createdAt, changedAt, body: JSON.stringify(body), ...columns };
}

/** What was written, checked. @throws {RecordsFault} `refused` with every problem */
export function checkedFields(schema: z.ZodType, value: unknown, about: string): Fields {
  const read = schema.safeParse(value, { reportInput: true });
  if (read.success) return read.data as Fields;
  throw new RecordsFault("refused", about, {
    problems: read.error.issues.flatMap((issue): Problem[] => {
      if (issue.code === "unrecognized_keys") return issue.keys.map((key) => problem([...issue.path, key], value, issue.message));
      return [problem(issue.path, value, issue.message)];
    }),
  });
}

function problem(path: readonly PropertyKey[], whole: unknown, allowed: string): Problem {
  const value = path.reduce<unknown>((at, key) => (typeof at === "object" && at !== null ? Reflect.get(at, key) : undefined), whole);
  return { path: path.map(String).join("."), value: value ?? null, allowed };
}
