import { type ChangeFeed, changeFeedHere } from "./changeFeed/changeFeed.ts";
import { changeFeedOnServer } from "./changeFeed/onServer.ts";
import { mustBeThere } from "./database/fileIdentity.ts";
import { openForTurns, openPostgres } from "./database/postgres.ts";
import { openSqliteBeside } from "./database/sqlite.ts";
import type { Runner } from "./database/transaction.ts";
import type { FileStore } from "./files/fileStore.ts";
import { filesInDatabase } from "./files/inDatabase.ts";
import { filesInFolder } from "./files/inFolder.ts";
import { prepareFolder, prepareRoot, type ShopFolder } from "./folder.ts";
import { type Ledger, ledgerInFolder, ledgerOnServer } from "./personal/ledger.ts";
import type { RecordsParts } from "./records.ts";

/** A database with what goes with it: where files lie, who is told. */
export interface OpenDatabase {
  readonly runner: Runner;
  readonly files: FileStore;
  readonly ledger: Ledger;
  readonly changeFeed: ChangeFeed;
  close(): Promise<void>;
}

type DatabaseParts = Pick<RecordsParts, "postgres" | "now" | "randomBytes">;

/** @throws {RecordsFault} `notReachable`; `busy` while a restore or a move has the database alone; and what SQLite says of a file */
export function openDatabase(parts: DatabaseParts, folder: ShopFolder): Promise<OpenDatabase> {
  return parts.postgres === undefined ? inFolder(parts, folder) : onServer(parts, parts.postgres, folder);
}

async function inFolder(parts: DatabaseParts, folder: ShopFolder): Promise<OpenDatabase> {
  prepareFolder(folder);
  const { db } = openSqliteBeside(folder.database);
  return {
    runner: { db, engine: "sqlite", chance: chanceOf(parts), mustBeThere: mustBeThere(folder.database) },
    files: filesInFolder(folder.live),
    ledger: ledgerInFolder(folder),
    changeFeed: changeFeedHere(),
    close: () => db.destroy(),
  };
}

async function onServer(parts: DatabaseParts, address: string, folder: ShopFolder): Promise<OpenDatabase> {
  const changeFeed = await changeFeedOnServer(address, Buffer.from(parts.randomBytes(8)).toString("hex"));
  const [db, turns] = [openPostgres(address), openForTurns(address)];
  const runner: Runner = { db, turns, engine: "postgres", chance: chanceOf(parts) };
  const files = filesInDatabase(parts.now);
  prepareRoot(folder);
  return {
    runner,
    files,
    ledger: ledgerOnServer(db, ledgerInFolder(folder)),
    changeFeed,
    async close() {
      await Promise.all([db.destroy(), turns.destroy()]);
      await changeFeed.close();
    },
  };
}

/** A number from 0 to 1. */
export function chanceOf({ randomBytes }: Pick<RecordsParts, "randomBytes">): () => number {
  return () => new DataView(randomBytes(4).slice().buffer).getUint32(0) / 2 ** 32;
}
