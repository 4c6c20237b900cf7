import { RecordsFault } from "#contract/records/fault";
import type { Db } from "../database/tables.ts";
import { keyOf, type Row, rowsAfter, type TableName } from "./moveRows.ts";

/**
 * Compares every row of every table on both sides.
 *
 * @returns how many rows there are, by table
 * @throws {RecordsFault} `damaged` with the first row that is not the same
 */
export async function compareRows(one: Db, other: Db, tables: readonly TableName[]): Promise<Record<string, number>> {
  const counts: Record<string, number> = {};
  for (const table of tables) {
    counts[table] = 0;
    for (let last: readonly unknown[] | null = null; ; ) {
      const [left, right]: [Row[], Row[]] = [await rowsAfter(one, table, last), await rowsAfter(other, table, last)];
      const at = left.findIndex((row, i) => textOf(row) !== textOf(right[i]));
      const differs = left[at] ?? right[left.length];
      if (differs !== undefined)
        throw new RecordsFault("damaged", `${table} ${keyOf(table, differs).join(" ")}, which did not arrive as it was`);
      if (left.length === 0) break;
      counts[table] += left.length;
      last = keyOf(table, left[left.length - 1]);
    }
  }
  return counts;
}

function textOf(row: Row | undefined): string {
  return row === undefined ? "" : JSON.stringify(Object.entries(row).sort(([a], [b]) => (a < b ? -1 : 1)));
}
