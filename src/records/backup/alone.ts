import { join } from "node:path";
import { setTimeout as sleep } from "node:timers/promises";
import { RecordsFault } from "#contract/records/fault";
import { openFile } from "../database/sqliteFile.ts";
import type { SqliteFile } from "../database/sqliteShape.ts";

/** How long a backup waits for another one that is being made, also by another program, ms. */
const WAIT_MS = 600_000;
const LOOK_EVERY_MS = 50;

/**
 * Has a folder of backups alone while `work` runs: nobody takes out a photo that a backup under way counts on. The lock is SQLite's on an empty
 * database: it works between programs on every system, and goes with a program that is killed.
 *
 * @param blobs folder of the photos and files of backups, which is there
 * @throws {RecordsFault} `busy` where somebody else has it all the time
 */
export async function withBackupsAlone<Answer>(blobs: string, work: () => Promise<Answer>, waitMs = WAIT_MS): Promise<Answer> {
  const lock = openFile(join(blobs, "lock.sqlite"), { timeout: 0 });
  try {
    const until = performance.now() + waitMs;
    while (!taken(lock)) {
      if (performance.now() > until) throw new RecordsFault("busy", blobs);
      await sleep(LOOK_EVERY_MS);
    }
    return await work();
  } finally {
    lock.close();
  }
}

function taken(lock: SqliteFile): boolean {
  try {
    lock.exec("begin exclusive");
    return true;
  } catch (error) {
    if (error instanceof Error && "code" in error && String(error.code).startsWith("SQLITE_BUSY")) return false;
    throw error;
  }
}
