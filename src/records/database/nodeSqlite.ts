import type { SqliteFile, SqliteOptions, SqliteStatement } from "./sqliteShape.ts";

/* Node's own SQLite (node:sqlite of its documentation) under the names of the other driver, as far as they are used here. */

interface NodeStatement {
  columns(): unknown[];
  all(...parameters: unknown[]): unknown[];
  get(...parameters: unknown[]): unknown;
  run(...parameters: unknown[]): { changes: number | bigint; lastInsertRowid: number | bigint };
  iterate(...parameters: unknown[]): IterableIterator<unknown>;
}

interface NodeDatabase {
  readonly isTransaction: boolean;
  prepare(sql: string): NodeStatement;
  exec(sql: string): void;
  close(): void;
}

/** What is used of the module. */
export interface NodeSqlite {
  readonly DatabaseSync: new (path: string, options: { readOnly: boolean; timeout: number }) => NodeDatabase;
  readonly StatementSync: { readonly prototype: object };
  backup(source: NodeDatabase, path: string, options: { rate: number }): Promise<number>;
}

/** What the other driver waits for a lock, ms. */
const USUAL_TIMEOUT_MS = 5000;

/** Primary result codes that are told apart here, by number; "Result and Error Codes" of SQLite's documentation. */
const CODES: Readonly<Record<number, string>> = {
  3: "SQLITE_PERM",
  5: "SQLITE_BUSY",
  6: "SQLITE_LOCKED",
  8: "SQLITE_READONLY",
  10: "SQLITE_IOERR",
  11: "SQLITE_CORRUPT",
  13: "SQLITE_FULL",
  14: "SQLITE_CANTOPEN",
  19: "SQLITE_CONSTRAINT",
  26: "SQLITE_NOTADB",
};
/** The extended ones. */
const EXTENDED: Readonly<Record<number, string>> = { 778: "SQLITE_IOERR_WRITE", 787: "SQLITE_CONSTRAINT_FOREIGNKEY" };

export function openWithNode(own: NodeSqlite, path: string, { readonly = false, timeout = USUAL_TIMEOUT_MS }: SqliteOptions): SqliteFile {
  const database = coded(() => new own.DatabaseSync(path, { readOnly: readonly, timeout }));
  const prepare = (sql: string) => statementOf(coded(() => database.prepare(sql)));
  return {
    name: path,
    get inTransaction() {
      return database.isTransaction;
    },
    prepare,
    exec: (sql) => coded(() => database.exec(sql)),
    pragma: (source) => prepare(`pragma ${source}`).all(),
    backup: (to, { progress }) => own.backup(database, to, { rate: progress() }).catch(rethrown),
    close: () => coded(() => database.close()),
  };
}

function statementOf(statement: NodeStatement): SqliteStatement {
  return {
    reader: statement.columns().length > 0,
    all: (...parameters) => coded(() => statement.all(...oneByOne(parameters))),
    get: (...parameters) => coded(() => statement.get(...oneByOne(parameters))),
    run: (...parameters) => coded(() => statement.run(...oneByOne(parameters))),
    iterate: (...parameters) => coded(() => statement.iterate(...oneByOne(parameters))),
  };
}

function oneByOne(parameters: unknown[]): unknown[] {
  const [first, ...others] = parameters;
  return Array.isArray(first) && others.length === 0 ? first : parameters;
}

function coded<Answer>(work: () => Answer): Answer {
  try {
    return work();
  } catch (error) {
    return rethrown(error);
  }
}

/** Its errors carry SQLite's number; the other driver's, and what is asked here, SQLite's name. */
function rethrown(error: unknown): never {
  if (error instanceof Error && "errcode" in error && typeof error.errcode === "number") {
    const name = EXTENDED[error.errcode] ?? CODES[error.errcode & 0xff];
    if (name !== undefined) Object.assign(error, { code: name });
  }
  throw error;
}
