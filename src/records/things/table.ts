import type { ThingKind } from "#contract/records/auditEntry";
import { RecordsFault } from "#contract/records/fault";
import type { Kept } from "#contract/records/fields";
import type { Db, ThingRow } from "../database/tables.ts";
import type { Session } from "../session.ts";
import type { Definition } from "./definition.ts";
import { type ReadRow, readRow, rescued } from "./rows.ts";
import { isUnreadable } from "./setAside.ts";

/** @throws {RecordsFault} `notFound` where this shop sees no such thing, `unreadable` */
export async function found<Thing extends Kept>(session: Session, definition: Definition<Thing>, id: string): Promise<Thing> {
  return (await foundRow(session, definition, id)).thing;
}

/** The same with what a newer program wrote into it. @throws {RecordsFault} `notFound`, `unreadable` */
export async function foundRow<Thing extends Kept>(
  { db, setAside }: Session,
  definition: Definition<Thing>,
  id: string,
): Promise<ReadRow<Thing>> {
  const row = await tableOf(db, definition.kind).selectAll().where("id", "=", id).executeTakeFirst();
  if (row === undefined) throw new RecordsFault("notFound", `${definition.kind} ${id}`);
  try {
    return readRow(definition, row as ThingRow);
  } catch (fault) {
    if (setAside === null || !isUnreadable(fault)) throw fault;
    setAside.note({ kind: definition.kind, id, problems: fault.problems });
    const thing = rescued(definition, row as ThingRow);
    if (thing === null) throw fault;
    return { thing, whole: null, schemaVersion: (row as ThingRow).schemaVersion };
  }
}

/** All tables of things have one shape; the query builder wants one name. */
export function tableOf(db: Db, kind: ThingKind) {
  return db.selectFrom(kind as "bowlers");
}

export async function insertRow(db: Db, kind: ThingKind, row: ThingRow): Promise<void> {
  await db
    .insertInto(kind as "bowlers")
    .values(row)
    .execute();
}

/** @throws {RecordsFault} `refused` where the shop sees the thing, and only another one may change it */
export async function replaceRow(db: Db, kind: ThingKind, { id, shopId, ...rest }: ThingRow): Promise<void> {
  const { numUpdatedRows } = await db
    .updateTable(kind as "bowlers")
    .set(rest)
    .where("id", "=", id)
    .executeTakeFirstOrThrow();
  mustBeOwn(numUpdatedRows, kind, id, shopId);
}

function mustBeOwn(written: bigint, kind: ThingKind, id: string, shopId: string): void {
  if (written > 0n) return;
  const problem = { path: "shopId", value: shopId, allowed: "the shop that keeps it: others see it with its ball, and leave it as it is" };
  throw new RecordsFault("refused", `${kind} ${id}`, { problems: [problem] });
}

/** @throws {RecordsFault} `refused` where something refers to it, or only another shop may take it out */
export async function removeRow({ db }: Session, kind: ThingKind, { id, shopId }: Pick<ThingRow, "id" | "shopId">): Promise<void> {
  try {
    const { numDeletedRows } = await db
      .deleteFrom(kind as "bowlers")
      .where("id", "=", id)
      .executeTakeFirstOrThrow();
    mustBeOwn(numDeletedRows, kind, id, shopId);
    await db.deleteFrom("terms").where("thingId", "=", id).execute();
  } catch (error) {
    // A foreign key: SQLite's and PostgreSQL's word for it.
    const code = error instanceof Error && "code" in error ? String(error.code) : "";
    if (code !== "SQLITE_CONSTRAINT_FOREIGNKEY" && code !== "23503") throw error;
    const problem = { path: "id", value: id, allowed: "a thing that nothing else refers to" };
    throw new RecordsFault("refused", `${kind} ${id}`, { problems: [problem] });
  }
}
