import { existsSync, renameSync, rmSync } from "node:fs";
import { readFile } from "node:fs/promises";
import { join, sep } from "node:path";
import { withFaults } from "../database/driverFault.ts";
import { holdAlone } from "../database/holdAlone.ts";
import { syncFolder } from "../files/syncedFile.ts";
import { type ShopFolder, shopFolder } from "../folder.ts";
import { ledgerInFolder } from "../personal/ledger.ts";
import { type TodaysFile, verifyWithGaps } from "./gaps.ts";
import { restoreOnServer } from "./restoreOnServer.ts";
import { safetyCopyName } from "./safetyCopy.ts";
import type { RestoreDone, RestoreParts } from "./unpackBackup.ts";
import { unpackBackup } from "./unpackBackup.ts";

/**
 * Puts a backup in the place of today's records: into a new folder, checked there, brought up to date and cleared of erased persons, then changed
 * for today's folder, which stays beside it; on PostgreSQL into a new schema, which is changed for today's. Nobody may have the records open meanwhile.
 *
 * @throws {RecordsFault} `badBackup`, `newerSchema`, `busy` where the records are open, `full`, `readOnly`. Today's records are then as they were.
 */
export function restoreBackup(path: string, parts: RestoreParts): Promise<RestoreDone> {
  return parts.postgres === undefined ? restoreInFolder(path, parts) : restoreOnServer(path, parts.postgres, parts);
}

function restoreInFolder(path: string, parts: RestoreParts): Promise<RestoreDone> {
  const folder = shopFolder(parts.folder);
  return withFaults(folder.root, async () => {
    const todays: TodaysFile = (name) => readFile(join(folder.live, ...name.split("/")));
    const { report, gaps } = await verifyWithGaps(path, todays, parts.withoutLost ?? false);
    const making = join(folder.root, "restoring");
    for (const left of [making, folder.checked]) rmSync(left, { recursive: true, force: true });
    try {
      await unpackBackup(path, making, { erased: await ledgerInFolder(folder).all(), gaps, todays }, parts);
      return { report, safetyCopy: await swap(making, folder, parts.now()), leftOut: gaps.lost };
    } finally {
      rmSync(making, { recursive: true, force: true });
    }
  });
}

/** Two renames; a start after a power cut between them ends the second (see `prepareFolder`). */
async function swap(making: string, folder: ShopFolder, now: number): Promise<string | null> {
  const hadLive = existsSync(folder.live);
  const letGo = existsSync(folder.database) ? holdAlone(folder) : () => {};
  try {
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
  } finally {
    letGo();
  }
}
