import { existsSync } from "node:fs";
import { join } from "node:path";
import { sql } from "kysely";
import { RecordsFault } from "#contract/records/fault";
import { identityOf } from "../database/fileIdentity.ts";
import { knownSchema, migrate } from "../database/migrate.ts";
import { STEPS } from "../database/migrations/steps.ts";
import { openSqlite } from "../database/sqlite.ts";
import type { SqliteFile } from "../database/sqliteShape.ts";
import type { Db } from "../database/tables.ts";
import { momentOf, type Runner } from "../database/transaction.ts";
import type { FileStore } from "../files/fileStore.ts";
import type { ShopFolder } from "../folder.ts";
import { MOVED_TABLES } from "../move/moveRows.ts";
import { type Erasure, erasuresOnServer, ledgerInFolder } from "../personal/ledger.ts";
import { copyTables } from "./copyTables.ts";
import { piecesOf } from "./zipWriter.ts";

/** One moment of the records of all shops of a database, as a backup takes it. */
export interface Snapshot {
  /** Writes the database into a new SQLite file. */
  copyTo(path: string): Promise<void>;
  /** The bytes of a photo or profile file; null where it was lost. */
  file(name: string): Promise<AsyncIterable<Uint8Array> | null>;
  erasures(): Promise<Erasure[]>;
}

export type WithSnapshot = <Answer>(work: (snapshot: Snapshot) => Promise<Answer>) => Promise<Answer>;

/** So many pages of SQLite at once: a megabyte, so that whoever writes meanwhile gets at the disk in between. */
const PAGES = 256;

/**
 * SQLite copies itself while it is used. The copy is read in one transaction, which others' writes neither change nor wait for; files are named by what
 * is in them and do not change.
 *
 * @param identity of the file that whoever asks has open
 */
export function snapshotOfFolder(folder: ShopFolder, identity: string | null): WithSnapshot {
  return async (work) => {
    // Opening would make an empty one where there is none.
    if (identityOf(folder.database) !== identity) throw new RecordsFault("folderGone", folder.database);
    const { raw } = openSqlite(folder.database);
    try {
      return await work({
        copyTo: (path) => copyOf(raw, path),
        async file(name) {
          const path = join(folder.live, ...name.split("/"));
          return existsSync(path) ? piecesOf(path) : null;
        },
        erasures: () => ledgerInFolder(folder).all(),
      });
    } finally {
      raw.close();
    }
  };
}

async function copyOf(raw: SqliteFile, path: string): Promise<void> {
  raw.exec("begin");
  try {
    // The first thing that is read is what fixes the moment. Without it, each write of another connection would make the copy begin anew.
    raw.prepare("select count(*) from sqlite_master").get();
    await raw.backup(path, { progress: () => PAGES });
  } finally {
    raw.exec("commit");
  }
}

/** PostgreSQL holds one moment of tables and files for as long as the transaction lasts; the rows are read into SQLite, and compared there. */
export function snapshotOfServer(runner: Runner, files: FileStore, now: () => number): WithSnapshot {
  return (work) =>
    momentOf(runner, (db) =>
      work({
        copyTo: (path) => copyInto(db, runner, path, now),
        async file(name) {
          const bytes = await files.get(db, name);
          return bytes === null ? null : whole(bytes);
        },
        erasures: () => erasuresOnServer(db),
      }),
    );
}

async function copyInto(from: Db, runner: Runner, path: string, now: () => number): Promise<void> {
  const { db, raw } = openSqlite(path);
  try {
    // Nobody needs the half of it after a power cut.
    raw.pragma("journal_mode = MEMORY");
    raw.pragma("synchronous = OFF");
    const { pending } = await knownSchema({ ...runner, db: from }, STEPS);
    // As old as the database is: the copy before a change of the schema is of the schema before.
    await migrate(
      { ...runner, db, engine: "sqlite" },
      STEPS.filter((step) => !pending.includes(step)),
      now,
    );
    const { rows } = await sql<{ name: string }>`select name from sqlite_master where type = 'table'`.execute(db);
    const there = MOVED_TABLES.filter((table) => rows.some(({ name }) => name === table));
    await copyTables(from, raw, there);
  } finally {
    await db.destroy();
  }
}

async function* whole(bytes: Uint8Array): AsyncGenerator<Uint8Array> {
  yield bytes;
}
