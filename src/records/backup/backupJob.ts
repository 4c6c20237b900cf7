import { readdir } from "node:fs/promises";
import { join } from "node:path";
import { openPostgres } from "../database/postgres.ts";
import { filesInDatabase } from "../files/inDatabase.ts";
import type { ShopFolder } from "../folder.ts";
import { withBackupsAlone } from "./alone.ts";
import { backupNameParts, isZip } from "./backupName.ts";
import type { BackupReport } from "./backups.ts";
import { blobsFolder, freeBlobs, prepareBlobs } from "./blobs.ts";
import { type ArchiveMade, type ArchiveOptions, makeArchive } from "./makeArchive.ts";
import { snapshotOfFolder, snapshotOfServer, type WithSnapshot } from "./snapshot.ts";
import { readManifest, verifyBackup } from "./verifyBackup.ts";

/** What a backup is made of: the file of the folder, which must still be the one that was opened; or a PostgreSQL database by its address. */
export type BackupSource = { readonly file: string | null } | { readonly postgres: string };

/** What is done in a process of its own, and what it answers with; all of it is plain data. */
export type BackupJob =
  | { readonly does: "make"; readonly folder: ShopFolder; readonly from: BackupSource; readonly asked: ArchiveOptions }
  | { readonly does: "verify"; readonly path: string }
  | { readonly does: "free"; readonly folder: ShopFolder /** Milliseconds since 1970. */; readonly now: number };

export interface BackupAnswers {
  readonly make: ArchiveMade;
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
      return freeUnnamed(job.folder, job.now);
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

/**
 * Takes out photos and files that no backup has named for long, whatever somebody called it. Where a zip cannot be read nobody knows what it names, and
 * nothing goes.
 *
 * @throws {RecordsFault} `badBackup` where it is one of ours by its name
 */
async function freeUnnamed(folder: ShopFolder, now: number): Promise<number> {
  const blobs = blobsFolder(folder);
  await prepareBlobs(blobs);
  return withBackupsAlone(blobs, async () => {
    const named = new Set<string>();
    for (const name of (await readdir(folder.backups)).filter(isZip)) {
      const manifest = await readManifest(join(folder.backups, name)).catch((error: unknown) => {
        if (backupNameParts(name) !== null) throw error;
        return null;
      });
      if (manifest === null) return 0;
      for (const { sha256 } of manifest.blobs ?? []) named.add(sha256);
    }
    return freeBlobs(blobs, named, now);
  });
}
