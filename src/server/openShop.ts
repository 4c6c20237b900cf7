import { existsSync } from "node:fs";
import { join } from "node:path";
import { RecordsFault } from "#contract/records/fault";
import { withoutPassword } from "#records/database/address";
import { makeDemonstration } from "#records/demonstration/makeDemonstration";
import { shopFolder } from "#records/folder";
import { openRecords } from "#records/openRecords";
import type { Records, RecordsParts } from "#records/records";
import { shopsOf } from "#records/shopsOf";
import type { PlacedConfig } from "./config/configSchema.ts";
import { SHOP_FOLDERS } from "./place/whichFolder.ts";

export interface ShopParts extends Omit<RecordsParts, "folder" | "postgres" | "shop"> {
  /** Takes a sentence for the person who starts the server. */
  readonly say: (words: string) => void;
}

/**
 * Opens the shop that is asked for, each in its own folder, and makes the invented one where it is not there yet. With a database of its own, one's
 * own shop lies there, and its folder holds the backups that this server makes and the ledger of erasures.
 *
 * @throws {RecordsFault} as `openRecords` does; `refused` where a shop lies in the folder and the database has none
 */
export async function openShop(config: PlacedConfig, { say, ...parts }: ShopParts): Promise<Records> {
  const { data, shop, database, shopName, demonstrationSeed } = config;
  if (shop === "own") {
    if (database !== null) {
      await mustNotBeLeftBehind(config.data, database, parts);
      say(`The records lie in ${withoutPassword(database)}`);
    }
    const where = database === null ? {} : { postgres: database };
    return openRecords({ ...parts, ...where, ...(shopName === null ? {} : { shop: shopName }), folder: join(data, SHOP_FOLDERS.own) });
  }
  const folder = join(data, SHOP_FOLDERS.demonstration);
  const today = new Date(parts.now()).toISOString().slice(0, 10);
  await makeDemonstration({ folder, seed: demonstrationSeed, today, programVersion: parts.programVersion, say });
  return openRecords({ ...parts, folder });
}

/** Whoever has a shop in its folder and names a new database would find an empty shop, and think that everything is lost. */
async function mustNotBeLeftBehind(data: string, database: string, parts: Pick<RecordsParts, "now" | "randomBytes">): Promise<void> {
  const folder = join(data, SHOP_FOLDERS.own);
  if (!existsSync(shopFolder(folder).database) || (await shopsOf({ ...parts, place: database })).length > 0) return;
  const shown = withoutPassword(database);
  const allowed = `a database that has a shop: gritwright move --from ${folder} --to ${shown} moves the one in the folder, gritwright shops ${shown} --add NAME begins a new one`;
  throw new RecordsFault("refused", "database", { problems: [{ path: "database", value: shown, allowed }] });
}
