import { createHash } from "node:crypto";
import { RecordsFault } from "#contract/records/fault";
import type { Db } from "../database/tables.ts";
import type { FileStore } from "../files/fileStore.ts";

/** A place of files, with the database that belongs to it. */
export interface FilePlace {
  readonly files: FileStore;
  readonly db: Db;
}

/**
 * Carries files over, and reads each again where it arrived. One that is there already, whole, is left.
 *
 * @param names as the files are named: by the checksum of what is in them
 * @param tell is called after each file
 * @returns names of those that were lost before
 * @throws {RecordsFault} `damaged` where one did not arrive as it is named
 */
export async function moveFiles(from: FilePlace, to: FilePlace, names: Iterable<string>, tell: () => void): Promise<string[]> {
  const missing: string[] = [];
  for (const name of names) {
    if (await isWhole(to, name)) continue;
    const bytes = await from.files.get(from.db, name);
    if (bytes === null) {
      missing.push(name);
      continue;
    }
    await to.files.put(to.db, name, bytes);
    if (!(await isWhole(to, name))) throw new RecordsFault("damaged", name);
    tell();
  }
  return missing;
}

async function isWhole({ files, db }: FilePlace, name: string): Promise<boolean> {
  const bytes = await files.get(db, name);
  return bytes !== null && name.includes(createHash("sha256").update(bytes).digest("hex"));
}
