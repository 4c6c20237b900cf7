import { CompiledQuery, type DatabaseConnection, Kysely, SqliteDialect, SqliteDriver } from "kysely";
import { readingBeside, WAIT_MS } from "./sqliteDriver.ts";
import { openFile } from "./sqliteFile.ts";
import type { SqliteFile } from "./sqliteShape.ts";
import type { Tables } from "./tables.ts";

/** How long SQLite itself waits inside a program that others ask meanwhile, ms. */
const SHORT_WAIT_MS = 5;

export interface OpenSqlite {
  readonly db: Kysely<Tables>;
  readonly raw: SqliteFile;
}

/**
 * Opens a database file so that an acknowledged write is on the disk.
 *
 * Drivers reopen a database in WAL mode with `synchronous=NORMAL`, which loses acknowledged writes when the power goes, so it is set here, every time.
 * `secure_delete` overwrites what is deleted: erased data do not stay behind in free pages.
 */
export function openSqlite(file: string): OpenSqlite {
  const raw = openRaw(file);
  return { db: new Kysely<Tables>({ dialect: new ImmediateDialect(raw) }), raw };
}

/** Opens it likewise, for a program that others ask meanwhile: what only reads does not wait for a write. */
export function openSqliteBeside(file: string): OpenSqlite {
  const raw = openRaw(file);
  // The driver waits by itself, and others are served meanwhile.
  raw.pragma(`busy_timeout = ${SHORT_WAIT_MS}`);
  return { db: new Kysely<Tables>({ dialect: readingBeside(raw) }), raw };
}

function openRaw(file: string): SqliteFile {
  const raw = openFile(file, { timeout: WAIT_MS });
  try {
    raw.pragma("journal_mode = WAL");
    raw.pragma("synchronous = FULL");
    raw.pragma("foreign_keys = ON");
    raw.pragma("secure_delete = ON");
    raw.pragma("cache_size = -32000");
  } catch (error) {
    raw.close();
    throw error;
  }
  return raw;
}

/** Nobody else has the file open from now on until it is closed. @throws SQLITE_BUSY while somebody has */
export function closeToOthers(raw: SqliteFile): void {
  // Leaving WAL mode wants the file alone; a lock that is taken in this mode is kept until the end.
  raw.pragma("busy_timeout = 200");
  raw.pragma("journal_mode = DELETE");
  raw.pragma("locking_mode = EXCLUSIVE");
  raw.exec("begin exclusive; commit");
}

class ImmediateDialect extends SqliteDialect {
  readonly #database: SqliteFile;

  constructor(database: SqliteFile) {
    super({ database });
    this.#database = database;
  }

  override createDriver(): SqliteDriver {
    return new ImmediateDriver(this.#database);
  }
}

class ImmediateDriver extends SqliteDriver {
  readonly #database: SqliteFile;

  constructor(database: SqliteFile) {
    super({ database });
    this.#database = database;
  }

  /** Takes the write lock at the beginning: a transaction that first reads and then wants it cannot wait, and is refused at once. */
  override async beginTransaction(connection: DatabaseConnection): Promise<void> {
    await connection.executeQuery(CompiledQuery.raw("begin immediate"));
  }

  /** On a full disk SQLite has rolled back by itself; a second time would fail, and hide what was wrong. */
  override async rollbackTransaction(connection: DatabaseConnection): Promise<void> {
    if (this.#database.inTransaction) await super.rollbackTransaction(connection);
  }
}
