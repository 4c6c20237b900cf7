import { sql } from "kysely";
import { TABLE_RULES } from "../database/tableRules.ts";
import type { Db, Tables } from "../database/tables.ts";

const BATCH = 200;

export type TableName = keyof Tables;
export type Row = Record<string, unknown>;
type Key = readonly unknown[];

/** Tables whose rows are taken along, those that are referred to first. */
export const MOVED_TABLES = (Object.keys(TABLE_RULES) as TableName[]).filter((table) => TABLE_RULES[table].isMoved);

/**
 * Carries all rows of all shops over, in the order of their keys. Called again after it was cut, it goes on behind the last row that arrived.
 *
 * @param from stands still meanwhile: one moment of it, or frozen
 * @param to the same schema; empty, or as far as an earlier call came
 * @param tell is called after each batch, with how many rows of a table have been carried by now
 */
export async function moveRows(
  from: Db,
  to: Db,
  tables: readonly TableName[],
  tell: (table: TableName, rows: number) => void,
): Promise<void> {
  for (const table of tables) {
    let carried = 0;
    for (let last = await lastKey(to, table); ; ) {
      const rows = await rowsAfter(from, table, last);
      if (rows.length === 0) break;
      await insert(to, table, rows);
      last = keyOf(table, rows[rows.length - 1]);
      carried += rows.length;
      tell(table, carried);
    }
    await carryReferences(from, to, table);
  }
}

/** The next rows behind a key, in the order of the primary key; the same order on both databases. */
export async function rowsAfter(db: Db, table: TableName, last: Key | null, limit = BATCH): Promise<Row[]> {
  const { key } = TABLE_RULES[table];
  let query = from(db, table).selectAll().limit(limit);
  if (last !== null) query = query.where(sql<boolean>`(${sql.join(key.map((column) => sql.ref(column)))}) > (${sql.join([...last])})`);
  for (const column of key) query = query.orderBy(column);
  return (await query.execute()) as Row[];
}

export function keyOf(table: TableName, row: Row): Key {
  return TABLE_RULES[table].key.map((column) => row[column]);
}

async function lastKey(db: Db, table: TableName): Promise<Key | null> {
  let query = from(db, table).selectAll().limit(1);
  for (const column of TABLE_RULES[table].key) query = query.orderBy(column, "desc");
  const row = (await query.executeTakeFirst()) as Row | undefined;
  return row === undefined ? null : keyOf(table, row);
}

/** A reference into the same table may lead to a row that comes later, where a clock was set back: it is put in at the end. */
async function insert(to: Db, table: TableName, rows: readonly Row[]): Promise<void> {
  const { refersToItself } = TABLE_RULES[table];
  const values = refersToItself === undefined ? rows : rows.map((row) => ({ ...row, [refersToItself]: null }));
  await to
    .insertInto(table as "bowlers")
    .values(values as never)
    .execute();
}

async function carryReferences(source: Db, to: Db, table: TableName): Promise<void> {
  const column = TABLE_RULES[table].refersToItself;
  if (column === undefined) return;
  const rows = await from(source, table).select(["id", column]).where(column, "is not", null).execute();
  for (const row of rows)
    await to
      .updateTable(table as "bowlers")
      .set({ [column]: row[column] })
      .where("id", "=", row.id as string)
      .execute();
}

/** All tables are gone through alike; the query builder wants one name. */
function from(db: Db, table: TableName) {
  return db.selectFrom(table as "bowlers");
}
