import { type AuditEntry, auditEntryKept } from "#contract/records/auditEntry";
import { RecordsFault } from "#contract/records/fault";
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

function entryOf(row: AuditRow): AuditEntry {
  const read = auditEntryKept.safeParse({ ...row, fields: JSON.parse(row.fields) });
  if (!read.success) throw new RecordsFault("damaged", `audit ${row.id}`, { cause: read.error });
  return read.data;
}
