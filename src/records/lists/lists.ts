import type { Write } from "../write.ts";

export type ImportKind = "bowlers" | "balls";

export interface RowProblem {
  /** Line of the table, the first row after the heading is 2. */
  readonly row: number;
  readonly column: string;
  readonly value: string;
  readonly allowed: string;
}

export interface ImportPreview {
  readonly columns: readonly string[];
  /** Which column feeds which field; a column that feeds none is left out. */
  readonly mapping: Readonly<Record<string, string>>;
  /** Fields that a column may feed. */
  readonly fields: readonly string[];
  readonly rows: number;
  /** Rows that would be passed over: same serial, or same name and number or address for mail. */
  readonly alreadyThere: number;
  /** The first rows as they would be kept. */
  readonly sample: readonly Readonly<Record<string, unknown>>[];
  readonly problems: readonly RowProblem[];
}

export interface ImportDone {
  readonly importId: string;
  readonly added: number;
  /** Rows that were passed over. */
  readonly alreadyThere: number;
}

export interface Lists {
  /** Everything as files: one JSON with all, one CSV a kind. Names and texts. */
  exportAll(): Promise<readonly { readonly name: string; readonly text: string }[]>;
  /**
   * What an import would do. Nothing is written.
   *
   * @param mapping field by column; without it, columns are matched by their names
   */
  preview(kind: ImportKind, csv: string, mapping?: Readonly<Record<string, string>>): Promise<ImportPreview>;
  /** All rows or none. @throws {RecordsFault} `refused` with every row's problems */
  apply(kind: ImportKind, csv: string, mapping: Readonly<Record<string, string>> | undefined, write: Write): Promise<ImportDone>;
  /** Takes out what an import added, where nobody has changed or used it since. @throws {RecordsFault} `refused`, `notFound` */
  undo(importId: string, write: Write): Promise<number>;
}
