import { type Key, type ReactNode, useRef, useState } from "react";
import { flushSync } from "react-dom";
import { TABLE } from "#words/en/rooms/pieces";
import { TableFile } from "./TableFile.tsx";

export interface Column<Row> {
  readonly name: string;
  readonly cell: (row: Row) => ReactNode;
  /**
   * Figures stand at the right, so that their digits are one under the other; a day, or a word that must not be broken, keeps to one line;
   * what is only there to be pressed is neither printed nor saved.
   */
  readonly kind?: "figure" | "day" | "press";
}

interface TableProps<Row> {
  readonly name: string;
  readonly columns: readonly Column<Row>[];
  readonly rows: readonly Row[];
  readonly keyOf: (row: Row) => Key;
  /** The room saves the same in bare figures. */
  readonly hasOwnFile?: boolean;
}

const AT_FIRST = 25;

/**
 * A table, and the same as a file. Of a long one the beginning is shown, and the rest when it is asked for; where its place is narrow each row
 * becomes a card of named figures.
 */
export function PlainTable<Row>({ name, columns, rows, keyOf, hasOwnFile = false }: TableProps<Row>) {
  const table = useRef<HTMLTableElement>(null);
  const [all, setAll] = useState(false);
  const shown = all ? rows : rows.slice(0, AT_FIRST);
  return (
    <div className="table-place">
      <table ref={table} className="stages plain-table">
        <caption className="note">{name}</caption>
        <thead>
          <tr>
            {columns.map((column) => (
              <th key={column.name} scope="col" className={column.kind}>
                {column.name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {shown.map((row) => (
            <tr key={keyOf(row)}>
              {columns.map((column) => (
                <td key={column.name} className={column.kind} data-name={column.name}>
                  {column.cell(row)}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      {!all && rows.length > shown.length && (
        <button type="button" className="button wide" onClick={() => setAll(true)}>
          {TABLE.showAll(rows.length)}
        </button>
      )}
      {!hasOwnFile && rows.length > 0 && <TableFile of={table} name={name} showAll={() => flushSync(() => setAll(true))} />}
    </div>
  );
}
