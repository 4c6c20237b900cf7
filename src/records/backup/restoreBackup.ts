import { closeSync, existsSync, fsyncSync, mkdirSync, openSync, readFileSync, renameSync, rmSync, writeFileSync, writeSync } from "node:fs";
import { dirname, join, sep } from "node:path";
import { RecordsFault } from "#contract/records/fault";
import { withFaults } from "../database/driverFault.ts";
import { schemaState } from "../database/migrate.ts";
import { STEPS } from "../database/migrations/steps.ts";
import { openSqlite } from "../database/sqlite.ts";
import { type ShopFolder, shopFolder } from "../folder.ts";
import { openRecords } from "../openRecords.ts";
import { syncFolder } from "../photos/syncedFile.ts";
import type { RecordsParts } from "../records.ts";
import type { BackupReport } from "./backups.ts";
import { safetyCopyName } from "./safetyCopy.ts";
import { readBackup, verifyBackup } from "./verifyBackup.ts";
import type { Taker } from "./zipFile.ts";

export interface RestoreDone {
  readonly report: BackupReport;
  /** Folder with what was there before; null where there was nothing. */
  readonly safetyCopy: string | null;
}

/** What may lie in a backup, and under which names; nothing else is written anywhere. */
const ENTRY = /^(?:records\.sqlite|erasures\.jsonl|(?:photos|profiles)\/[0-9a-f]{64}\.[a-z]{3,7})$/;

/**
 * Puts a backup in the place of today's records: into a new folder, checked there, brought up to date and cleared of erased persons, then changed
 * for today's folder, which stays beside it. Nobody may have the records open meanwhile.
 *
 * @throws {RecordsFault} `badBackup`, `newerSchema`, `busy` where the records are open, `full`, `readOnly`. Today's records are then as they were.
 */
export function restoreBackup(path: string, parts: Omit<RecordsParts, "postgres">): Promise<RestoreDone> {
  const folder = shopFolder(parts.folder);
  return withFaults(folder.root, async () => {
    const report = await verifyBackup(path);
    const making = join(folder.root, "restoring");
    for (const left of [making, folder.checked]) rmSync(left, { recursive: true, force: true });
    try {
      await unpack(path, making, folder);
      await checkDatabase(shopFolder(making));
      // Opening it brings the schema up to date and ends the erasures of the ledger.
      const restored = await openRecords({ ...parts, folder: making });
      // A backup lies in more hands than the shop: nobody goes on with a session of then.
      await restored.accounts.endAllSessions();
      await restored.close();
      return { report, safetyCopy: await swap(making, folder, parts.now()) };
    } finally {
      rmSync(making, { recursive: true, force: true });
    }
  });
}

async function unpack(path: string, making: string, folder: ShopFolder): Promise<void> {
  const inMaking = shopFolder(making);
  mkdirSync(inMaking.live, { recursive: true });
  await readBackup(path, (name) => {
    if (!ENTRY.test(name))
      throw new RecordsFault("badBackup", path, { problems: [{ path: name, value: null, allowed: "names of a backup" }] });
    return writer(name === "erasures.jsonl" ? inMaking.erasures : join(inMaking.live, ...name.split("/")));
  });
  // Persons erased since the backup was made: the ledger of today is the longer one, or there is a third.
  const ledgers = [inMaking.erasures, folder.erasures].filter((one) => existsSync(one)).map((one) => readFileSync(one, "utf8"));
  const lines = new Set(ledgers.flatMap((text) => text.split("\n")).filter((line) => line !== ""));
  writeFileSync(inMaking.erasures, [...lines].map((line) => `${line}\n`).join(""), { flush: true });
}

function writer(path: string): Taker {
  mkdirSync(dirname(path), { recursive: true });
  const file = openSync(path, "wx");
  return (piece) => {
    if (piece !== null) {
      for (let at = 0; at < piece.length; ) at += writeSync(file, piece, at);
      return;
    }
    fsyncSync(file);
    closeSync(file);
  };
}

async function checkDatabase({ database }: ShopFolder): Promise<void> {
  const { db, raw } = openSqlite(database);
  try {
    await schemaState({ db, engine: "sqlite", chance: () => 0 }, STEPS);
    const found = raw.pragma("integrity_check(1)", { simple: true });
    if (found !== "ok")
      throw new RecordsFault("badBackup", database, { problems: [{ path: "records.sqlite", value: found, allowed: "ok" }] });
  } finally {
    await db.destroy();
  }
}

/** Two renames; a start after a power cut between them ends the second (see `prepareFolder`). */
async function swap(making: string, folder: ShopFolder, now: number): Promise<string | null> {
  const hadLive = existsSync(folder.live);
  if (existsSync(folder.database)) mustBeAlone(folder);
  const safety = join(folder.root, safetyCopyName(now));
  const inMaking = shopFolder(making);
  renameSync(inMaking.erasures, folder.erasures);
  renameSync(inMaking.live, folder.checked);
  await syncFolder(folder.root);
  if (hadLive) renameSync(folder.live, safety);
  await syncFolder(folder.root);
  renameSync(folder.checked, folder.live);
  await syncFolder(folder.root);
  return hadLive ? `${safety}${sep}` : null;
}

/** Leaving WAL mode wants the file alone, and puts everything into one file: the safety copy is whole. A damaged file is kept as it is. */
function mustBeAlone({ database }: ShopFolder): void {
  try {
    const { raw } = openSqlite(database);
    try {
      raw.pragma("busy_timeout = 200");
      raw.pragma("journal_mode = DELETE");
    } finally {
      raw.close();
    }
  } catch (error) {
    const code = error instanceof Error && "code" in error ? String(error.code) : "";
    if (!code.startsWith("SQLITE_CORRUPT") && code !== "SQLITE_NOTADB") throw error;
  }
}
