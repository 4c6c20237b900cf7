import { mkdir, open, rename } from "node:fs/promises";
import { dirname } from "node:path";

/** Writes a file so that it is whole and on the disk, under its name, when this returns; or there is none of that name. */
export async function writeSynced(path: string, bytes: Uint8Array): Promise<void> {
  const folder = dirname(path);
  await mkdir(folder, { recursive: true });
  const making = `${path}.making`;
  const file = await open(making, "w");
  try {
    await file.writeFile(bytes);
    await file.sync();
  } finally {
    await file.close();
  }
  await rename(making, path);
  await syncFolder(folder);
}

/** A new name in a folder is on the disk once the folder is. Windows has no such call and does it by itself. */
export async function syncFolder(folder: string): Promise<void> {
  if (process.platform === "win32") return;
  const handle = await open(folder, "r");
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}
