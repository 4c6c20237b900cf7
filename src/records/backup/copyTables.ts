import { createHash } from "node:crypto";
import { RecordsFault } from "#contract/records/fault";
import type { SqliteFile } from "../database/sqliteShape.ts";
import { TABLE_RULES } from "../database/tableRules.ts";
import type { Db } from "../database/tables.ts";
import { keyOf, type Row, rowsAfter, type TableName } from "../move/moveRows.ts";

/** So many rows at once: what they are asked with costs less than they do, and a batch of them is little memory. */
const BATCH = 1000;

/**
 * Copies tables into a new SQLite file with the same schema, in one transaction, and reads each again there: what arrived is what was read. Each row is
 * asked of the server once.
 *
 * @param from one moment of a database
 * @throws {RecordsFault} `damaged` with the table whose rows did not arrive as they were
 */
export async function copyTables(from: Db, into: SqliteFile, tables: readonly TableName[]): Promise<void> {
  into.exec("begin");
  // A ticket may refer to one that comes later; at the end all of it must hold.
  into.pragma("defer_foreign_keys = ON");
  const sums = new Map<TableName, string>();
  for (const table of tables) sums.set(table, await copyTable(from, into, table));
  into.exec("commit");
  for (const table of tables)
    if (sumOfTable(into, table) !== sums.get(table)) throw new RecordsFault("damaged", `${table}, whose rows did not arrive as they were`);
}

/** @returns checksum of all rows in the order of their keys */
async function copyTable(from: Db, into: SqliteFile, table: TableName): Promise<string> {
  const hash = createHash("sha256");
  const columns = (into.pragma(`table_info("${table}")`) as { name: string }[]).map(({ name }) => name);
  const insert = into.prepare(`insert into "${table}" (${columns.map(quoted).join(", ")}) values (${columns.map(() => "?").join(", ")})`);
  for (let last: readonly unknown[] | null = null; ; ) {
    const rows = await rowsAfter(from, table, last, BATCH);
    for (const row of rows) {
      hash.update(textOf(columns, row));
      insert.run(columns.map((column) => row[column]));
    }
    if (rows.length < BATCH) return hash.digest("hex");
    last = keyOf(table, rows[rows.length - 1]);
  }
}

function sumOfTable(raw: SqliteFile, table: TableName): string {
  const hash = createHash("sha256");
  const columns = (raw.pragma(`table_info("${table}")`) as { name: string }[]).map(({ name }) => name);
  const rows = raw.prepare(`select * from "${table}" order by ${TABLE_RULES[table].key.map(quoted).join(", ")}`);
  for (const row of rows.iterate()) hash.update(textOf(columns, row as Row));
  return hash.digest("hex");
}

function textOf(columns: readonly string[], row: Row): string {
  return `${JSON.stringify(columns.map((column) => row[column]))}\n`;
}

function quoted(column: string): string {
  return `"${column}"`;
}
