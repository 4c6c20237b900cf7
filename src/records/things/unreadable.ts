import { THING_KINDS, type ThingKind } from "#contract/records/auditEntry";
import { RecordsFault } from "#contract/records/fault";
import type { Kept } from "#contract/records/fields";
import { withFaults } from "../database/driverFault.ts";
import type { ThingRow } from "../database/tables.ts";
import { type Session, timeOf } from "../session.ts";
import type { ChangeOn } from "../write.ts";
import type { Definition, Fields } from "./definition.ts";
import { KINDS } from "./kinds.ts";
import { checkedFields, rowOf } from "./rows.ts";
import { readable, type SetAside, type SetAsideNotes } from "./setAside.ts";
import { replaceRow, tableOf } from "./table.ts";

/** So many rows are looked at before others get their turn. */
const PORTION = 200;

/** The room for what cannot be read: finding all of it, looking at it as it lies there, putting it right. */
export interface Unreadable {
  /** What anybody has met so far. Asks nothing of the database. */
  met(): readonly SetAside[];
  /** Looks through everything that is kept; others get their turn meanwhile. */
  lookThrough(): Promise<readonly SetAside[]>;
  /** @throws {RecordsFault} `notFound` */
  raw(kind: ThingKind, id: string): Promise<{ readonly version: number; readonly schemaVersion: number; readonly body: string }>;
  /** Puts a whole document in its place. @throws {RecordsFault} `refused` with what is wrong; `changedMeanwhile`, `notFound` */
  mend(kind: ThingKind, id: string, body: Fields, write: ChangeOn): Promise<void>;
}

export function unreadable(session: Session, notes: SetAsideNotes): Unreadable {
  return {
    met: () => notes.all(),
    lookThrough: () =>
      withFaults("the database", async () => {
        for (const kind of THING_KINDS) await lookThrough(session, KINDS[kind]);
        return notes.all();
      }),
    raw: (kind, id) =>
      withFaults(kind, async () => {
        const { version, schemaVersion, body } = await rowAt(session, kind, id);
        return { version, schemaVersion, body };
      }),
    mend: (kind, id, body, write) =>
      session.write(write, async (inside) => {
        const definition = KINDS[kind];
        const row = await rowAt(inside, kind, id);
        if (row.version !== write.expectedVersion) throw new RecordsFault("changedMeanwhile", `${kind} ${id}`, { current: null });
        const { shopId, createdAt } = row;
        const own = { id, shopId, version: row.version + 1, createdAt, changedAt: timeOf(inside.now()) };
        const thing = checkedFields(definition.kept, { ...body, ...own }, `${kind} ${id}`) as Kept & Fields;
        await replaceRow(inside.db, kind, rowOf(definition, thing));
        await inside.note({ shopId, by: write.by, did: "mend", kind, thingId: id, fields: Object.keys(body) });
        notes.forget(kind, id);
      }),
  };
}

async function rowAt({ db }: Session, kind: ThingKind, id: string): Promise<ThingRow> {
  const row = await tableOf(db, kind).selectAll().where("id", "=", id).executeTakeFirst();
  if (row === undefined) throw new RecordsFault("notFound", `${kind} ${id}`);
  return row as ThingRow;
}

async function lookThrough(session: Session, definition: Definition<Kept>): Promise<void> {
  for (let after = ""; ; ) {
    const rows = await tableOf(session.db, definition.kind).selectAll().where("id", ">", after).orderBy("id").limit(PORTION).execute();
    readable(session, definition, rows as ThingRow[]);
    const last = rows.at(-1);
    if (last === undefined) return;
    after = last.id as string;
    await new Promise((resolve) => setImmediate(resolve));
  }
}
