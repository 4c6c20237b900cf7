import { existsSync } from "node:fs";
import { mkdir, readFile, rm } from "node:fs/promises";
import { join } from "node:path";
import { RecordsFault } from "#contract/records/fault";
import { writeSynced } from "../files/syncedFile.ts";
import type { ShopFolder } from "../folder.ts";
import type { BackupFailure } from "./backups.ts";
import { failureSchema, lastStateFile } from "./lastState.ts";

/** Remembers that the last backup failed, for every program that has the records open, until one succeeds. */
export interface FailureMark {
  set(failure: BackupFailure): Promise<void>;
  /** @param lostFiles how many photos and profile files the backup that succeeded could not hold any more */
  clear(lostFiles: number): Promise<void>;
  /** How many that was, of the last that succeeded. */
  lostFiles(): Promise<number>;
  get(): Promise<BackupFailure | null>;
}

export function failureMark(folder: Pick<ShopFolder, "backups">): FailureMark {
  const { backups } = folder;
  const path = join(backups, "failed.json");
  const last = lastStateFile(folder);
  // What no file can be written for at all is still known here.
  let here: BackupFailure | null = null;
  const lostFiles = async () => (await last.get())?.lostFiles ?? 0;
  return {
    async set(failure) {
      here = failure;
      // A folder that is gone is not made anew for it.
      await mkdir(backups, { mode: 0o700 }).catch(() => {});
      if (!existsSync(backups)) return;
      // A full disk has no room for a new file, and the old one goes on being there.
      const inPlace = async () => last.putInPlace({ failed: failure, lostFiles: await lostFiles() });
      await writeSynced(path, Buffer.from(`${JSON.stringify(failure)}\n`)).catch(() => inPlace().catch(() => {}));
    },
    async clear(lost) {
      here = null;
      await rm(path, { force: true });
      // The backup is good, whether this can be written or not.
      await last.put({ failed: null, lostFiles: lost }).catch(() => {});
    },
    lostFiles,
    async get() {
      const text = await readFile(path, "utf8").catch(() => null);
      return (text === null ? null : readFailure(text)) ?? (await last.get())?.failed ?? here;
    },
  };
}

function readFailure(text: string): BackupFailure | null {
  try {
    return failureSchema.parse(JSON.parse(text));
  } catch {
    return null;
  }
}

/** Not a failure: another backup is being made, or the program ends. */
export function isFailure(error: unknown): boolean {
  return !(error instanceof RecordsFault && error.kind === "busy");
}
