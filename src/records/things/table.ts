import type { ThingKind } from "#contract/records/auditEntry";
import { RecordsFault } from "#contract/records/fault";
import type { Kept } from "#contract/records/fields";
import type { Db, ThingRow } from "../database/tables.ts";
import type { Session } from "../session.ts";
import type { Definition } from "./definition.ts";
import { thingOf } from "./rows.ts";

/** @throws {RecordsFault} `notFound` where this shop sees no such thing */
export async function found<Thing extends Kept>({ db }: Session, definition: Definition<Thing>, id: string): Promise<Thing> {
  const row = await tableOf(db, definition.kind).selectAll().where("id", "=", id).executeTakeFirst();
  if (row === undefined) throw new RecordsFault("notFound", `${definition.kind} ${id}`);
  return thingOf(definition, row as ThingRow);
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
