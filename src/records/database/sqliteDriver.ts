import { setTimeout as sleep } from "node:timers/promises";
import {
  CompiledQuery,
  type DatabaseConnection,
  type Dialect,
  type Driver,
  type QueryResult,
  SqliteAdapter,
  SqliteDialect,
  type TransactionSettings,
} from "kysely";
import { openFile } from "./sqliteFile.ts";
import type { SqliteFile } from "./sqliteShape.ts";

/** How long a write waits for another program to finish its own, and how often it looks, ms. */
export const WAIT_MS = 4000;
const AGAIN_MS = 15;

/**
 * One connection writes and another reads: what only reads waits for no write, however long that takes, and sees what was last kept
 * (SQLite's documentation, "Write-Ahead Logging", Concurrency). A transaction that only reads has a connection of its own, and one moment.
 */
export function readingBeside(writer: SqliteFile): Dialect {
  const plain = new SqliteDialect({ database: writer });
  return {
    createDriver: () => new ReadingBesideDriver(writer),
    createAdapter: () => new SqliteAdapter(),
    createQueryCompiler: () => plain.createQueryCompiler(),
    createIntrospector: (db) => plain.createIntrospector(db),
  };
}

class ReadingBesideDriver implements Driver {
  readonly #writer: SqliteFile;
  #reader: SqliteFile | null = null;
  #last: Promise<void> = Promise.resolve();

  constructor(writer: SqliteFile) {
    this.#writer = writer;
  }

  async init(): Promise<void> {
    this.#reader = openReader(this.#writer);
  }

  async acquireConnection(): Promise<DatabaseConnection> {
    if (this.#reader === null) throw new TypeError("a driver is made ready first");
    return new Connection(this.#writer, this.#reader, () => this.#turn());
  }

  /** Takes the write lock at the beginning: a transaction that first reads and then wants it cannot wait, and is refused at once. */
  async beginTransaction(connection: DatabaseConnection, { accessMode }: TransactionSettings): Promise<void> {
    if (accessMode === "read only") return ours(connection).beginMoment(openReader(this.#writer));
    await ours(connection).begin();
  }

  async commitTransaction(connection: DatabaseConnection): Promise<void> {
    await connection.executeQuery(CompiledQuery.raw("commit"));
  }

  /** On a full disk SQLite has rolled back by itself; a second time would fail, and hide what was wrong. */
  async rollbackTransaction(connection: DatabaseConnection): Promise<void> {
    if (ours(connection).isInTransaction()) await connection.executeQuery(CompiledQuery.raw("rollback"));
  }

  async releaseConnection(connection: DatabaseConnection): Promise<void> {
    ours(connection).release();
  }

  async destroy(): Promise<void> {
    this.#reader?.close();
    this.#writer.close();
  }

  /** Resolves once whoever came before has let go, with what lets go. */
  async #turn(): Promise<() => void> {
    const before = this.#last;
    let letGo: () => void = () => {};
    this.#last = new Promise((resolve) => {
      letGo = resolve;
    });
    await before;
    return letGo;
  }
}

function openReader({ name }: SqliteFile): SqliteFile {
  return openFile(name, { readonly: true });
}

/** The types of the driver that is built upon know any connection; it is handed none but ours. */
function ours(connection: DatabaseConnection): Connection {
  return connection as Connection;
}

/** Holds nothing until it is known what is asked: what only reads goes to the reader, anything else waits for its turn with the writer. */
class Connection implements DatabaseConnection {
  readonly #writer: SqliteFile;
  readonly #reader: SqliteFile;
  readonly #turn: () => Promise<() => void>;
  /** The turn that is held. */
  #letGo: (() => void) | null = null;
  /** Of a transaction that only reads. */
  #moment: SqliteFile | null = null;

  constructor(writer: SqliteFile, reader: SqliteFile, turn: () => Promise<() => void>) {
    this.#writer = writer;
    this.#reader = reader;
    this.#turn = turn;
  }

  async begin(): Promise<void> {
    this.#letGo ??= await this.#turn();
    await whenFree(() => run(this.#writer, "begin immediate", []));
  }

  async beginMoment(own: SqliteFile): Promise<void> {
    this.#moment = own;
    await this.executeQuery(CompiledQuery.raw("begin"));
  }

  isInTransaction(): boolean {
    return (this.#moment ?? this.#writer).inTransaction;
  }

  async executeQuery<Row>({ sql, parameters }: CompiledQuery): Promise<QueryResult<Row>> {
    if (this.#moment !== null) return run(this.#moment, sql, parameters);
    if (this.#letGo !== null) return run(this.#writer, sql, parameters);
    if (/^\s*select\b/i.test(sql)) return run(this.#reader, sql, parameters);
    const letGo = await this.#turn();
    try {
      return await whenFree(() => run<Row>(this.#writer, sql, parameters));
    } finally {
      letGo();
    }
  }

  /** Nothing of ours reads so. */
  streamQuery<Row>(): AsyncIterableIterator<QueryResult<Row>> {
    throw new TypeError("rows come all at once");
  }

  release(): void {
    this.#moment?.close();
    this.#letGo?.();
    this.#letGo = null;
  }
}

/** While another program writes, this one does what else there is to do: waiting inside SQLite would keep everybody waiting. */
async function whenFree<Answer>(write: () => Answer): Promise<Answer> {
  for (const until = performance.now() + WAIT_MS; ; ) {
    try {
      return write();
    } catch (error) {
      const isBusy = error instanceof Error && "code" in error && String(error.code).startsWith("SQLITE_BUSY");
      if (!isBusy || performance.now() > until) throw error;
      await sleep(AGAIN_MS);
    }
  }
}

function run<Row>(database: SqliteFile, sql: string, parameters: readonly unknown[]): QueryResult<Row> {
  const statement = database.prepare(sql);
  if (statement.reader) return { rows: statement.all(parameters) as Row[] };
  const { changes, lastInsertRowid } = statement.run(parameters);
  return { numAffectedRows: BigInt(changes), insertId: BigInt(lastInsertRowid), rows: [] };
}
