import { open, readFile } from "node:fs/promises";
import { join } from "node:path";
import { z } from "zod";
import { RECORDS_FAULT_KINDS } from "#contract/records/fault";
import { writeSynced } from "../files/syncedFile.ts";
import type { ShopFolder } from "../folder.ts";

export const failureSchema = z.strictObject({
  at: z.iso.datetime(),
  why: z.enum(["asked", "scheduled", "before migration", "before restore"]),
  fault: z.enum([...RECORDS_FAULT_KINDS, "broken"]),
});

const lastStateSchema = z.strictObject({
  failed: failureSchema.nullable(),
  /** How many photos and profile files were lost before the last good backup was made. */
  lostFiles: z.int(),
});
export type LastState = z.output<typeof lastStateSchema>;

/** Bytes of the file, whatever it says: within one block of any disk. */
const LENGTH = 512;

/**
 * How it stands with the last backup, in a file that is there since the last good one and always of one length: it is overwritten in place, for which
 * most file systems want no room. Those that never overwrite (copy on write) do, and a full one of them may forget.
 */
export function lastStateFile({ backups }: Pick<ShopFolder, "backups">) {
  const path = join(backups, "last.json");
  return {
    /** Null where there is none, or none that can be read. */
    async get(): Promise<LastState | null> {
      const text = await readFile(path, "utf8").catch(() => null);
      try {
        return text === null ? null : lastStateSchema.parse(JSON.parse(text));
      } catch {
        return null;
      }
    },
    /** After a good backup. @throws as the file system does */
    put: async (state: LastState): Promise<void> => {
      if (!(await overwrite(path, bytesOf(state)))) await writeSynced(path, bytesOf(state));
    },
    /** Only where it is there already, in its place. @throws as the file system does */
    putInPlace: async (state: LastState): Promise<void> => {
      await overwrite(path, bytesOf(state));
    },
  };
}

function bytesOf(state: LastState): Buffer {
  return Buffer.from(`${JSON.stringify(state).padEnd(LENGTH - 1)}\n`);
}

/** @returns false where there is no such file */
async function overwrite(path: string, bytes: Uint8Array): Promise<boolean> {
  const file = await open(path, "r+").catch(() => null);
  if (file === null) return false;
  try {
    await file.write(bytes, 0, bytes.length, 0);
    await file.truncate(bytes.length);
    await file.sync();
  } finally {
    await file.close();
  }
  return true;
}
