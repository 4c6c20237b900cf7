import { readdir } from "node:fs/promises";
import { join } from "node:path";
import { openPostgres } from "../database/postgres.ts";
import { filesInDatabase } from "../files/inDatabase.ts";
import type { ShopFolder } from "../folder.ts";
import { withBackupsAlone } from "./alone.ts";
import { backupNameParts } from "./backupName.ts";
import type { BackupReport } from "./backups.ts";
import { blobsFolder, freeBlobs, prepareBlobs } from "./blobs.ts";
import { type ArchiveAsked, makeArchive } from "./makeArchive.ts";
import { snapshotOfFolder, snapshotOfServer, type WithSnapshot } from "./snapshot.ts";
import { readManifest, verifyBackup } from "./verifyBackup.ts";

/** What a backup is made of: the file of the folder, which must still be the one that was opened; or a PostgreSQL database by its address. */
export type BackupSource = { readonly file: string | null } | { readonly postgres: string };

/** What is done in a process of its own, and what it answers with; all of it is plain data. */
export type BackupJob =
  | { readonly does: "make"; readonly folder: ShopFolder; readonly from: BackupSource; readonly asked: ArchiveAsked }
  | { readonly does: "verify"; readonly path: string }
  | { readonly does: "free"; readonly folder: ShopFolder };

export interface BackupAnswers {
  /** Bytes of the file. */
  readonly make: number;
  readonly verify: BackupReport;
  /** How many photos and files were taken out. */
  readonly free: number;
}

/** @throws {RecordsFault} as `makeArchive` and `verifyBackup` do */
export async function doBackupJob(job: BackupJob): Promise<BackupAnswers[BackupJob["does"]]> {
  switch (job.does) {
    case "make":
      return makeArchive(job.folder, snapshotsOf(job.folder, job.from, Date.parse(job.asked.madeAt)), job.asked);
    case "verify":
      return verifyBackup(job.path);
    case "free":
      return freeUnnamed(job.folder);
  }
}

function snapshotsOf(folder: ShopFolder, from: BackupSource, now: number): WithSnapshot {
  if ("file" in from) return snapshotOfFolder(folder, from.file);
  return async (work) => {
    const db = openPostgres(from.postgres);
    try {
      const files = filesInDatabase(() => now);
      return await snapshotOfServer({ db, engine: "postgres", chance: () => 0 }, files, () => now)(work);
    } finally {
      await db.destroy();
    }
  };
}

/** Takes out photos and files that no backup names any more. Where a backup cannot be read nobody knows what it names, and nothing goes. */
async function freeUnnamed(folder: ShopFolder): Promise<number> {
  const blobs = blobsFolder(folder);
  await prepareBlobs(blobs);
  return withBackupsAlone(blobs, async () => {
    const named = new Set<string>();
    for (const name of (await readdir(folder.backups)).filter((one) => backupNameParts(one) !== null))
      for (const { sha256 } of (await readManifest(join(folder.backups, name))).blobs ?? []) named.add(sha256);
    return freeBlobs(blobs, named);
  });
}
