import { existsSync } from "node:fs";
import { RecordsFault } from "#contract/records/fault";
import { isAddress, withoutPassword } from "../database/address.ts";
import { knownSchema } from "../database/migrate.ts";
import { STEPS } from "../database/migrations/steps.ts";
import { holdAlone, openPostgres } from "../database/postgres.ts";
import { closeToOthers, openSqlite } from "../database/sqlite.ts";
import type { Runner } from "../database/transaction.ts";
import { filesInDatabase } from "../files/inDatabase.ts";
import { filesInFolder } from "../files/inFolder.ts";
import { prepareFolder, shopFolder } from "../folder.ts";
import { chanceOf } from "../openDatabase.ts";
import { type Ledger, ledgerInFolder, ledgerInTable } from "../personal/ledger.ts";
import type { RecordsParts } from "../records.ts";
import type { FilePlace } from "./moveFiles.ts";

/** Records on one side of a move, which nobody else has open meanwhile. */
export interface Side extends FilePlace {
  readonly runner: Runner;
  readonly ledger: Ledger;
  /** Where it lies, without a password. */
  readonly shown: string;
  close(): Promise<void>;
}

export type SideParts = Pick<RecordsParts, "now" | "randomBytes">;

/**
 * @param place a shop's folder or the address of a PostgreSQL database
 * @throws {RecordsFault} `busy` where anybody has it open
 */
export function openSide(place: string, parts: SideParts): Promise<Side> {
  return isAddress(place) ? onServer(place, parts) : inFolder(place, parts);
}

/** Whether there is anything to move from: a slip of the pen makes no new folder. */
export function isThere(place: string): boolean {
  return isAddress(place) || existsSync(shopFolder(place).database);
}

async function onServer(address: string, parts: SideParts): Promise<Side> {
  const letGo = await holdAlone(address);
  const db = openPostgres(address);
  return {
    db,
    runner: { db, engine: "postgres", chance: chanceOf(parts) },
    files: filesInDatabase(parts.now),
    ledger: ledgerInTable(db),
    shown: withoutPassword(address),
    async close() {
      await db.destroy();
      await letGo();
    },
  };
}

async function inFolder(root: string, parts: SideParts): Promise<Side> {
  const folder = shopFolder(root);
  prepareFolder(folder);
  const { db, raw } = openSqlite(folder.database);
  try {
    closeToOthers(raw);
  } catch (error) {
    raw.close();
    throw error;
  }
  return {
    db,
    runner: { db, engine: "sqlite", chance: chanceOf(parts) },
    files: filesInFolder(folder.live),
    ledger: ledgerInFolder(folder),
    shown: root,
    async close() {
      await db.destroy();
      // Where nothing has been asked of it yet, that alone closes nothing.
      raw.close();
    },
  };
}

/** @throws {RecordsFault} `refused` where the schema is older than this program; `newerSchema` */
export async function mustBeUpToDate({ runner, shown }: Side): Promise<void> {
  const { at, pending } = await knownSchema(runner, STEPS);
  if (pending.length === 0) return;
  throw new RecordsFault("refused", shown, {
    problems: [
      {
        path: "schema",
        value: at,
        allowed: `${STEPS.at(-1)?.name}: open the records once with this program, which brings them up to date`,
      },
    ],
  });
}
