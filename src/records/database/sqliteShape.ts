/** How a file is opened. */
export interface SqliteOptions {
  readonly readonly?: boolean;
  /** How long SQLite waits for a lock, ms. */
  readonly timeout?: number;
}

/** Parameters are given one by one, or all of them as one list. */
export interface SqliteStatement {
  /** Whether it gives rows. */
  readonly reader: boolean;
  all(...parameters: unknown[]): unknown[];
  get(...parameters: unknown[]): unknown;
  run(...parameters: unknown[]): { changes: number | bigint; lastInsertRowid: number | bigint };
  iterate(...parameters: unknown[]): IterableIterator<unknown>;
}

/** A database file that is open, through whichever driver this machine has; both have SQLite itself in them, and its promises are those of SQLite. */
export interface SqliteFile {
  readonly name: string;
  readonly inTransaction: boolean;
  prepare(sql: string): SqliteStatement;
  exec(sql: string): unknown;
  pragma(source: string): unknown;
  /** Copies it as it is now, so many pages at a time. */
  backup(path: string, options: { readonly progress: () => number }): Promise<unknown>;
  close(): unknown;
}
