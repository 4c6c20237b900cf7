import { rm } from "node:fs/promises";
import { join } from "node:path";
import { restoreBackup } from "#records/backup/restoreBackup";
import { shopFolder } from "#records/folder";
import type { RecordsParts } from "#records/records";
import type { PlacedConfig } from "../config/configSchema.ts";
import { openShop, type ShopParts } from "../openShop.ts";
import { SHOP_FOLDERS } from "../place/whichFolder.ts";
import { NoUpdate } from "./inspect.ts";
import type { Program } from "./state.ts";
import { started, stopped, wellWithin } from "./wellness.ts";

/** Backs up one's own shop, while it may be in use. @returns path of the backup */
export async function backedUp(config: PlacedConfig, parts: ShopParts): Promise<string> {
  const records = await openShop({ ...config, shop: "own" }, parts);
  try {
    const { name } = await records.backups.make("asked", "sharing");
    return join(shopFolder(join(config.data, SHOP_FOLDERS.own)).backups, name);
  } finally {
    await records.close();
  }
}

/**
 * Lets a new version bring a copy of the shop up to date and serve it, before it sees the shop itself.
 *
 * @param backup the copy is made from it; null where there is no shop yet
 * @param folder for as long as it takes
 * @throws {NoUpdate} where it is not well in time
 */
export async function rehearsed(
  program: Program,
  { backup, folder, parts, mostMs }: { backup: string | null; folder: string; parts: Omit<RecordsParts, "folder">; mostMs: number },
): Promise<void> {
  await rm(folder, { recursive: true, force: true });
  try {
    if (backup !== null) await restoreBackup(backup, { ...parts, folder: join(folder, SHOP_FOLDERS.own) });
    const ownAlone = Object.fromEntries(Object.entries(process.env).filter(([name]) => !name.startsWith("GRITWRIGHT_")));
    const child = started(program, ["serve", "--own", "--data", folder, "--port", "0", "--no-open"], ownAlone);
    const why = await wellWithin(child, program.version, mostMs);
    await stopped(child);
    if (why !== null)
      throw new NoUpdate(
        `Version ${program.version}, tried on a copy of the shop, ${why}. The shop itself has not seen it. Nothing has changed.`,
        "the version",
      );
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}
