import { existsSync } from "node:fs";
import { readdir, readFile, rm, stat } from "node:fs/promises";
import { join } from "node:path";
import { RecordsFault } from "#contract/records/fault";
import { asRecordsFault, withFaults } from "../database/driverFault.ts";
import type { FileStore } from "./fileStore.ts";
import { writeSynced } from "./syncedFile.ts";

const FOLDERS = ["photos", "profiles"] as const;

/** Files in the shop's folder. A file is on the disk, synced, before its row is; it goes when the row has gone. */
export function filesInFolder(live: string): FileStore {
  const pathOf = (name: string) => join(live, ...name.split("/"));
  return {
    put: (_inside, name, bytes) => withFaults(live, () => writeSynced(pathOf(name), bytes)),
    get: (_db, name) => readOrNull(pathOf(name)),
    remove: async (_inside, names) => async () => {
      for (const name of names) await rm(pathOf(name), { force: true });
    },
    async olderThan(_db, time) {
      const old: string[] = [];
      for (const folder of FOLDERS.filter((one) => existsSync(join(live, one))))
        for (const name of await readdir(join(live, folder)))
          if ((await stat(join(live, folder, name))).mtimeMs < time) old.push(`${folder}/${name}`);
      return old;
    },
  };
}

async function readOrNull(path: string): Promise<Uint8Array | null> {
  try {
    return await readFile(path);
  } catch (cause) {
    const fault = asRecordsFault(cause, path);
    if (fault instanceof RecordsFault && fault.kind === "notFound") return null;
    throw fault;
  }
}
