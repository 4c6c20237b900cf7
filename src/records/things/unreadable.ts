import { THING_KINDS, type ThingKind } from "#contract/records/auditEntry";
import { RecordsFault } from "#contract/records/fault";
import type { Kept } from "#contract/records/fields";
import { withFaults } from "../database/driverFault.ts";
import type { ThingRow } from "../database/tables.ts";
import type { Unreadable } from "../records.ts";
import { type Session, type SetAsideNotes, timeOf } from "../session.ts";
import type { Definition, Fields } from "./definition.ts";
import { KINDS } from "./kinds.ts";
import { checkedFields, rowOf } from "./rows.ts";
import { readable } from "./setAside.ts";
import { keepTerms, mustFit } from "./store.ts";
import { replaceRow, tableOf } from "./table.ts";

/** So many rows are looked at before others get their turn. */
const PORTION = 200;

export function unreadable(session: Session, notes: SetAsideNotes): Unreadable {
  return {
    met: () => notes.all(),
    lookThrough: (signal) =>
      withFaults("the database", async () => {
        for (const kind of THING_KINDS) await lookThrough(session, KINDS[kind], signal);
        return notes.all();
      }),
    raw: (id) =>
      withFaults("the records", async () => {
        const { kind, row } = await rowAt(session, id);
        const { version, schemaVersion, body } = row;
        return { kind, version, schemaVersion, body };
      }),
    mend: (id, body, write) =>
      session.write(write, async (inside) => {
        const { kind, row } = await rowAt(inside, id);
        if (row.version !== write.expectedVersion) throw new RecordsFault("changedMeanwhile", `${kind} ${id}`, { current: null });
        const { shopId, createdAt } = row;
        const own = { id, shopId, version: row.version + 1, createdAt, changedAt: timeOf(inside.now()) };
        const thing = checkedFields(KINDS[kind].kept, { ...body, ...own }, `${kind} ${id}`) as Kept & Fields;
        await mustFit(inside, KINDS[kind], thing, null);
        await replaceRow(inside.db, kind, rowOf(KINDS[kind], thing));
        await keepTerms(inside, KINDS[kind], thing);
        await inside.note({ shopId, by: write.by, did: "mend", kind, thingId: id, fields: Object.keys(body) });
        notes.forget(kind, id);
      }),
  };
}

async function rowAt({ db }: Session, id: string): Promise<{ readonly kind: ThingKind; readonly row: ThingRow }> {
  for (const kind of THING_KINDS) {
    const row = await tableOf(db, kind).selectAll().where("id", "=", id).executeTakeFirst();
    if (row !== undefined) return { kind, row: row as ThingRow };
  }
  throw new RecordsFault("notFound", id);
}

async function lookThrough(session: Session, definition: Definition<Kept>, signal: AbortSignal | undefined): Promise<void> {
  const seen = new Set<string>();
  for (let after = ""; signal?.aborted !== true; ) {
    const rows = await tableOf(session.db, definition.kind).selectAll().where("id", ">", after).orderBy("id").limit(PORTION).execute();
    readable(session, definition, rows as ThingRow[]);
    for (const { id } of rows) seen.add(id as string);
    const last = rows.at(-1);
    // What is gone is not to be read any more.
    if (last === undefined) return session.setAside?.only(definition.kind, seen);
    after = last.id as string;
    await new Promise((resolve) => setImmediate(resolve));
  }
}
