import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { sql } from "kysely";
import { SCHEMA } from "../database/address.ts";
import { withFaults } from "../database/driverFault.ts";
import { migrate } from "../database/migrate.ts";
import { STEPS } from "../database/migrations/steps.ts";
import { holdAlone, mustStillBeAlone, openPostgres } from "../database/postgres.ts";
import { openSqlite } from "../database/sqlite.ts";
import type { Db } from "../database/tables.ts";
import { filesInDatabase } from "../files/inDatabase.ts";
import { filesInFolder } from "../files/inFolder.ts";
import { shopFolder } from "../folder.ts";
import { compareRows } from "../move/compareRows.ts";
import { moveFiles } from "../move/moveFiles.ts";
import { MOVED_TABLES, moveRows } from "../move/moveRows.ts";
import { chanceOf } from "../openDatabase.ts";
import { erasuresOnServer, ledgerInFolder, ledgerInTable } from "../personal/ledger.ts";
import type { RecordsParts } from "../records.ts";
import { filesOfRecords } from "../tidy.ts";
import { type TodaysFile, verifyWithGaps } from "./gaps.ts";
import { safetySchemaName } from "./safetySchema.ts";
import type { RestoreDone, RestoreParts } from "./unpackBackup.ts";
import { unpackBackup } from "./unpackBackup.ts";

const RESTORING = "gritwright_restoring";

/**
 * Puts a backup in the place of a PostgreSQL database's records: made ready in a folder of its own as every restore is, carried into a new schema,
 * compared there row by row, then changed for today's schema in one transaction.
 */
export function restoreOnServer(path: string, address: string, parts: RestoreParts): Promise<RestoreDone> {
  return withFaults("the PostgreSQL database", async () => {
    const letGo = await holdAlone(address);
    // Only its owner may read it.
    const making = mkdtempSync(join(tmpdir(), "gritwright-restoring-"));
    const today = openPostgres(address);
    try {
      const { get } = filesInDatabase(parts.now);
      const todays: TodaysFile = (name) => get(today, name);
      const { report, gaps } = await verifyWithGaps(path, todays, parts.withoutLost ?? false);
      await unpackBackup(path, making, { erased: await erasuresOnServer(today), gaps, todays }, parts);
      await load(making, today, address, parts);
      return { report, safetyCopy: await swap(today, parts.now()), leftOut: gaps.lost };
    } finally {
      await today.destroy();
      await letGo();
      rmSync(making, { recursive: true, force: true });
    }
  });
}

async function load(making: string, today: Db, address: string, parts: RecordsParts): Promise<void> {
  await sql`drop schema if exists ${sql.id(RESTORING)} cascade`.execute(today);
  const folder = shopFolder(making);
  const { db: from } = openSqlite(folder.database);
  const to = openPostgres(address, RESTORING);
  try {
    await migrate({ db: to, engine: "postgres", chance: chanceOf(parts) }, STEPS, parts.now);
    await moveRows(from, to, MOVED_TABLES, () => {});
    for (const entry of await ledgerInFolder(folder).all()) await ledgerInTable(to).add(entry);
    const places = [
      { db: from, files: filesInFolder(folder.live) },
      { db: to, files: filesInDatabase(parts.now) },
    ] as const;
    await moveFiles(...places, await filesOfRecords(from, places[0].files), () => {});
    await compareRows(from, to, MOVED_TABLES);
  } finally {
    await to.destroy();
    await from.destroy();
  }
}

/** @returns name of the schema with what was there before; null where there was none */
function swap(db: Db, now: number): Promise<string | null> {
  return db.transaction().execute(async (inside) => {
    await mustStillBeAlone(inside);
    const { rows } = await sql`select 1 from pg_namespace where nspname = ${SCHEMA}`.execute(inside);
    const safety = rows.length === 0 ? null : safetySchemaName(now);
    if (safety !== null) await sql`alter schema ${sql.id(SCHEMA)} rename to ${sql.id(safety)}`.execute(inside);
    await sql`alter schema ${sql.id(RESTORING)} rename to ${sql.id(SCHEMA)}`.execute(inside);
    return safety;
  });
}
