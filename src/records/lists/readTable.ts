import { csvRows } from "#contract/csv";
import { RecordsFault } from "#contract/records/fault";
import type { Fields } from "../things/definition.ts";
import { IMPORT_FIELDS, IMPORT_SCHEMAS, OWNER } from "./importFields.ts";
import type { ImportKind, RowProblem } from "./lists.ts";
import { eachOf } from "./portions.ts";

const MOST_ROWS = 20_000;
const MOST_COLUMNS = 200;
/** The heading is line 1. */
const FIRST_ROW = 2;

export interface ReadRow {
  readonly row: number;
  readonly fields: Fields;
  /** Name of the owner, for a ball. */
  readonly owner: string | null;
}

export interface ReadTable {
  readonly columns: readonly string[];
  readonly mapping: Readonly<Record<string, string>>;
  readonly rows: readonly ReadRow[];
  readonly problems: readonly RowProblem[];
}

/**
 * A table as things to be kept, and what is wrong with it.
 *
 * @param asked field by column
 * @throws {RecordsFault} `refused` where there is no table, or the mapping names what is not there
 */
export async function readTable(kind: ImportKind, csv: string, asked: Readonly<Record<string, string>> | undefined): Promise<ReadTable> {
  const [heading, ...lines] = csvRows(csv);
  if (heading === undefined || lines.length === 0) throw refused("csv", null, "a heading and at least one row");
  if (lines.length > MOST_ROWS) throw refused("csv", lines.length, `up to ${MOST_ROWS} rows`);
  if (heading.length > MOST_COLUMNS) throw refused("csv", heading.length, `up to ${MOST_COLUMNS} columns`);
  const columns = heading.map((name) => name.trim());
  const mapping = asked ?? guessed(kind, columns);
  mustBeMapping(kind, columns, mapping);
  const problems: RowProblem[] = [];
  const rows = await eachOf(lines, (cells, i) => readRow(kind, columns, mapping, cells, i + FIRST_ROW, problems));
  return { columns, mapping, rows, problems };
}

function readRow(
  kind: ImportKind,
  columns: readonly string[],
  mapping: Readonly<Record<string, string>>,
  cells: readonly string[],
  row: number,
  problems: RowProblem[],
): ReadRow {
  const fields: Fields = {};
  for (const [column, field] of Object.entries(mapping)) {
    const text = (cells[columns.indexOf(column)] ?? "").trim();
    if (text !== "") IMPORT_FIELDS[kind][field].put(fields, text);
  }
  if (cells.length > columns.length)
    problems.push({ row, column: "", value: cells.slice(columns.length).join(","), allowed: `${columns.length} cells` });
  const { [OWNER]: owner = null, ...own } = fields;
  const read = IMPORT_SCHEMAS[kind].safeParse(own, { reportInput: true });
  if (read.success) return { row, fields: read.data, owner: owner as string | null };
  for (const issue of read.error.issues) {
    const field = issue.path.map(String).at(-1) ?? "";
    const column = Object.entries(mapping).find(([, mapped]) => mapped === field)?.[0] ?? field;
    problems.push({ row, column, value: String(issue.input ?? ""), allowed: issue.message });
  }
  return { row, fields: own, owner: owner as string | null };
}

function guessed(kind: ImportKind, columns: readonly string[]): Record<string, string> {
  const plain = (text: string) => text.toLowerCase().replace(/[^a-z]/g, "");
  const mapping: Record<string, string> = {};
  const taken = new Set<string>();
  for (const column of columns) {
    const field = Object.entries(IMPORT_FIELDS[kind]).find(
      ([name, { alsoCalled }]) => !taken.has(name) && [name, ...alsoCalled].some((one) => plain(one) === plain(column)),
    )?.[0];
    if (field === undefined) continue;
    mapping[column] = field;
    taken.add(field);
  }
  return mapping;
}

function mustBeMapping(kind: ImportKind, columns: readonly string[], mapping: Readonly<Record<string, string>>): void {
  const fields = Object.keys(IMPORT_FIELDS[kind]);
  for (const [column, field] of Object.entries(mapping)) {
    if (!columns.includes(column)) throw refused("mapping", column, columns.join(", "));
    if (!fields.includes(field)) throw refused(`mapping.${column}`, field, fields.join(", "));
  }
  if (new Set(Object.values(mapping)).size < Object.keys(mapping).length) throw refused("mapping", mapping, "each field once");
}

function refused(path: string, value: unknown, allowed: string): RecordsFault {
  return new RecordsFault("refused", "import", { problems: [{ path, value, allowed }] });
}
