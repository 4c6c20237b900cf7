import { type AuditEntry, auditEntryKept } from "#contract/records/auditEntry";
import { withFaults } from "../database/driverFault.ts";
import type { AuditRow } from "../database/tables.ts";
import type { Things } from "../records.ts";
import { type Session, timeOf } from "../session.ts";
import { mustBeLimit, USUAL_LIMIT } from "./page.ts";
import { shopsIn } from "./settings.ts";

export function audit(session: Session): Things["audit"] {
  const { db, shopId } = session;
  return {
    note: (did, by) => session.write({ by }, (inside) => inside.note({ shopId, by, did, kind: "settings", thingId: shopId, fields: [] })),
    noteInAll: (did) =>
      withFaults("audit", async () => {
        const { newId, now } = session;
        await session.acrossShops().unnoted(async (inside) => {
          for (const { id } of await shopsIn(inside))
            await inside
              .insertInto("audit")
              .values({ id: newId(), shopId: id, at: timeOf(now()), by: id, did, kind: "settings", thingId: id, fields: "[]" })
              .execute();
        });
      }),
    list: ({ after = null, limit = USUAL_LIMIT, order = "newest first", where = {} } = {}) =>
      withFaults("audit", async () => {
        mustBeLimit(limit);
        const newestFirst = order === "newest first";
        let query = db.selectFrom("audit").selectAll();
        for (const field of ["kind", "thingId", "by"] as const) {
          const value = where[field];
          if (value !== undefined) query = query.where(field, "=", value);
        }
        if (after !== null) query = query.where("id", newestFirst ? "<" : ">", after);
        const rows = await query
          .orderBy("id", newestFirst ? "desc" : "asc")
          .limit(limit + 1)
          .execute();
        const items = rows.slice(0, limit).map(entryOf);
        return { items, next: rows.length > limit ? (items.at(-1)?.id ?? null) : null };
      }),
  };
}

/** What cannot be read hides nothing else: it stands in the list as that. */
function entryOf(row: AuditRow): AuditEntry {
  const read = auditEntryKept.safeParse({ ...row, fields: fieldsOf(row.fields) });
  if (read.success) return read.data;
  const { id, shopId } = row;
  const at = auditEntryKept.shape.at.safeParse(row.at).data ?? timeOf(0);
  return { id, shopId, at, by: shopId, did: "not readable", kind: "settings", thingId: shopId, fields: [] };
}

/** Null where it is no list. */
export function fieldsOf(fields: string): unknown {
  try {
    return JSON.parse(fields);
  } catch {
    return null;
  }
}
