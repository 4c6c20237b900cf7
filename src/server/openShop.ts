import { join } from "node:path";
import { withoutPassword } from "#records/database/address";
import { makeDemonstration } from "#records/demonstration/makeDemonstration";
import { openRecords } from "#records/openRecords";
import type { Records, RecordsParts } from "#records/records";
import type { Config } from "./config/configSchema.ts";

export interface ShopParts extends Omit<RecordsParts, "folder" | "postgres" | "shop"> {
  /** Takes a sentence for the person who starts the server. */
  readonly say: (words: string) => void;
}

/**
 * Opens the shop that is asked for, each in its own folder, and makes the invented one where it is not there yet. With a database of its own, one's
 * own shop lies there, and its folder holds the backups that this server makes and the ledger of erasures.
 *
 * @throws {RecordsFault} as `openRecords` does
 */
export async function openShop(config: Config, { say, ...parts }: ShopParts): Promise<Records> {
  const { data, shop, database, shopName, demonstrationSeed } = config;
  if (shop === "own") {
    if (database !== null) say(`The records lie in ${withoutPassword(database)}`);
    const where = database === null ? {} : { postgres: database };
    return openRecords({ ...parts, ...where, ...(shopName === null ? {} : { shop: shopName }), folder: join(data, "shop") });
  }
  const folder = join(data, "demonstration");
  const today = new Date(parts.now()).toISOString().slice(0, 10);
  await makeDemonstration({ folder, seed: demonstrationSeed, today, programVersion: parts.programVersion, say });
  return openRecords({ ...parts, folder });
}
