import { closeSync, fsyncSync, mkdirSync, openSync, writeFileSync, writeSync } from "node:fs";
import { dirname, join } from "node:path";
import { RecordsFault } from "#contract/records/fault";
import { knownSchema } from "../database/migrate.ts";
import { STEPS } from "../database/migrations/steps.ts";
import { openSqlite } from "../database/sqlite.ts";
import { prepareFolder, prepareRoot, type ShopFolder, shopFolder } from "../folder.ts";
import { openRecords } from "../openRecords.ts";
import { type Erasure, joined, ledgerInFolder, ledgerText } from "../personal/ledger.ts";
import type { RecordsParts } from "../records.ts";
import { shopsIn } from "../things/settings.ts";
import type { BackupReport } from "./backups.ts";
import { type Gaps, soundBytes, type TodaysFile } from "./gaps.ts";
import { readBackup, type Taker } from "./verifyBackup.ts";

/** What a restore did. */
export interface RestoreDone {
  readonly report: BackupReport;
  /** Folder, or schema of the database, with what was there before; null where there was nothing. */
  readonly safetyCopy: string | null;
  /** Names of photos and files that were nowhere, and are not in the records now. */
  readonly leftOut: readonly string[];
}

export interface RestoreParts extends RecordsParts {
  /** Restores everything else where photos or files of the backup are missing or damaged, and today's records do not have them either. */
  readonly withoutLost?: boolean;
}

/** What may lie in a backup, and under which names; nothing else is written anywhere. */
const ENTRY = /^(?:records\.sqlite|erasures\.jsonl|(?:photos|profiles)\/[0-9a-f]{64}\.[a-z]{3,7})$/;

/** What is unpacked besides the file itself. */
export interface UnpackOptions {
  /** Ledger of today: persons erased since the backup was made. */
  readonly erased: readonly Erasure[];
  readonly gaps: Gaps;
  readonly todays: TodaysFile;
}

/**
 * Unpacks a backup into a new folder, checks it there, brings it up to date and clears it of erased persons: all that is to be done before it takes
 * the place of today's records.
 *
 * @throws {RecordsFault} `badBackup`, `newerSchema`, `full`, `readOnly`
 */
export async function unpackBackup(path: string, making: string, asked: UnpackOptions, parts: RecordsParts): Promise<void> {
  const { erased, gaps, todays } = asked;
  const folder = shopFolder(making);
  prepareRoot(folder);
  prepareFolder(folder);
  const refused = (name: string, allowed: string) =>
    new RecordsFault("badBackup", path, { problems: [{ path: name, value: null, allowed }] });
  const take = (name: string): Taker => {
    if (!ENTRY.test(name)) throw refused(name, "names of a backup");
    return writer(name === "erasures.jsonl" ? folder.erasures : join(folder.live, ...name.split("/")));
  };
  await readBackup(path, take, { leftOut: new Set([...gaps.today.map(({ name }) => name), ...gaps.lost]) });
  for (const file of gaps.today) {
    const bytes = await soundBytes(file, todays);
    if (bytes === null) throw refused(file.name, "what lay in today's records a moment ago");
    const taker = take(file.name);
    taker(bytes);
    taker(null);
  }
  const all = joined(await ledgerInFolder(folder).all(), erased);
  writeFileSync(folder.erasures, ledgerText(all), { flush: true });
  const [shop] = await checkedShops(folder);
  // Opening it, for whichever of its shops, brings the schema up to date and ends the erasures of the ledger.
  const { now, randomBytes, programVersion } = parts;
  const restored = await openRecords({ folder: making, now, randomBytes, programVersion, ...(shop === undefined ? {} : { shop }) });
  // A backup lies in more hands than the shop: nobody goes on with a session of then.
  await restored.accounts.endAllSessions();
  await restored.audit.noteInAll("restore");
  await restored.close();
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

/** Ids of the shops in it. */
async function checkedShops({ database }: ShopFolder): Promise<string[]> {
  const { db, raw } = openSqlite(database);
  try {
    await knownSchema({ db, engine: "sqlite", chance: () => 0 }, STEPS);
    const { integrity_check: found } = raw.prepare("pragma integrity_check(1)").get() as { integrity_check: string };
    if (found !== "ok")
      throw new RecordsFault("badBackup", database, { problems: [{ path: "records.sqlite", value: found, allowed: "ok" }] });
    return (await shopsIn(db)).map(({ id }) => id);
  } finally {
    await db.destroy();
  }
}
