import { existsSync } from "node:fs";
import { mkdir, readFile, rm } from "node:fs/promises";
import { join } from "node:path";
import { z } from "zod";
import { RECORDS_FAULT_KINDS, RecordsFault } from "#contract/records/fault";
import { writeSynced } from "../files/syncedFile.ts";
import type { ShopFolder } from "../folder.ts";
import type { BackupFailure } from "./backups.ts";

const failureSchema = z.strictObject({
  at: z.iso.datetime(),
  why: z.enum(["asked", "scheduled", "before migration", "before restore"]),
  fault: z.enum([...RECORDS_FAULT_KINDS, "broken"]),
});

/** Remembers that the last backup failed, for every program that has the records open, until one succeeds. */
export interface FailureMark {
  set(failure: BackupFailure): Promise<void>;
  clear(): Promise<void>;
  get(): Promise<BackupFailure | null>;
}

export function failureMark({ backups }: Pick<ShopFolder, "backups">): FailureMark {
  const path = join(backups, "failed.json");
  // What no file can be written for, as on a full disk, is still known here.
  let here: BackupFailure | null = null;
  return {
    async set(failure) {
      here = failure;
      // A folder that is gone is not made anew for it.
      await mkdir(backups, { mode: 0o700 }).catch(() => {});
      if (existsSync(backups)) await writeSynced(path, Buffer.from(`${JSON.stringify(failure)}\n`)).catch(() => {});
    },
    async clear() {
      here = null;
      await rm(path, { force: true });
    },
    async get() {
      const text = await readFile(path, "utf8").catch(() => null);
      return text === null ? here : (readFailure(text) ?? here);
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
