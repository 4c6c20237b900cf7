import { join } from "node:path";
import { makeDemonstration } from "#records/demonstration/makeDemonstration";
import { openRecords } from "#records/openRecords";
import type { Records, RecordsParts } from "#records/records";
import type { Config } from "./config/configSchema.ts";

export interface ShopParts extends Omit<RecordsParts, "folder" | "postgres" | "shopId"> {
  /** Takes a sentence for the person who starts the server. */
  readonly say: (words: string) => void;
}

/**
 * Opens the shop that is asked for, each in its own folder, and makes the invented one where it is not there yet.
 *
 * @throws {RecordsFault} as `openRecords` does
 */
export async function openShop({ data, shop, demonstrationSeed }: Config, { say, ...parts }: ShopParts): Promise<Records> {
  if (shop === "own") return openRecords({ ...parts, folder: join(data, "shop") });
  const folder = join(data, "demonstration");
  const today = new Date(parts.now()).toISOString().slice(0, 10);
  await makeDemonstration({ folder, seed: demonstrationSeed, today, programVersion: parts.programVersion, say });
  return openRecords({ ...parts, folder });
}
