import { RecordsFault } from "#contract/records/fault";
import type { Kept } from "#contract/records/fields";
import type { ThingRow } from "../database/tables.ts";
import type { Page, PageRequest } from "../records.ts";
import type { Session } from "../session.ts";
import type { Definition } from "./definition.ts";
import { readable } from "./setAside.ts";
import { tableOf } from "./table.ts";

export const USUAL_LIMIT = 50;
const MOST_LIMIT = 500;

export type Where = Partial<Record<string, string | number | null | readonly string[]>>;

/** One page of a kind, narrowed by fields that have a column. */
export async function page<Thing extends Kept>(
  session: Session,
  definition: Definition<Thing>,
  { after, limit = USUAL_LIMIT, order = "newest first", where = {} }: PageRequest & { readonly where?: Where },
): Promise<Page<Thing>> {
  const { db } = session;
  mustBeLimit(limit);
  const newestFirst = order === "newest first";
  let query = tableOf(db, definition.kind).selectAll();
  for (const [field, value] of Object.entries(where)) {
    if (value === undefined) continue;
    mustBeLookup(definition, field);
    if (value === null) query = query.where(field, "is", null);
    else query = Array.isArray(value) ? query.where(field, "in", value) : query.where(field, "=", value as string);
  }
  if (after !== undefined && after !== null) query = query.where("id", newestFirst ? "<" : ">", after);
  const rows = await query
    .orderBy("id", newestFirst ? "desc" : "asc")
    .limit(limit + 1)
    .execute();
  const shown = rows.slice(0, limit) as ThingRow[];
  return { items: readable(session, definition, shown), next: rows.length > limit ? (shown.at(-1)?.id ?? null) : null };
}

/** @throws {RecordsFault} `refused` for a page of no size, or too large a one */
export function mustBeLimit(limit: number): void {
  if (Number.isInteger(limit) && limit >= 1 && limit <= MOST_LIMIT) return;
  throw new RecordsFault("refused", "limit", { problems: [{ path: "limit", value: limit, allowed: `1 ≤ x ≤ ${MOST_LIMIT}` }] });
}

function mustBeLookup({ lookups, kind }: Pick<Definition<Kept>, "lookups" | "kind">, field: string): void {
  if (Object.hasOwn(lookups, field)) return;
  const allowed = Object.keys(lookups).join(", ");
  throw new RecordsFault("refused", kind, { problems: [{ path: `where.${field}`, value: field, allowed }] });
}
