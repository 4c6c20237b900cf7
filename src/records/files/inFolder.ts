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
    async remove(_inside, names) {
      const seen = await Promise.all(names.map(async (name) => ({ path: pathOf(name), mark: await markOf(pathOf(name)) })));
      return async () => {
        // The same bytes may have been put there again since, for a row of their own.
        for (const { path, mark } of seen) if ((await markOf(path)) === mark) await rm(path, { force: true });
      };
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

/** Another one for each time that a file was put there; null where there is none. */
async function markOf(path: string): Promise<string | null> {
  if (!existsSync(path)) return null;
  const { ino, mtimeMs } = await stat(path);
  return `${ino} ${mtimeMs}`;
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
