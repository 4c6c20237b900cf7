import { existsSync, readFileSync } from "node:fs";
import { open } from "node:fs/promises";
import { dirname } from "node:path";
import { z } from "zod";
import { RecordsFault } from "#contract/records/fault";
import { id, instant } from "#contract/records/fields";
import type { ShopFolder } from "../folder.ts";
import { syncFolder } from "../photos/syncedFile.ts";

/** An erasure that was asked for. The ledger lies outside the database, so that an older database learns of it. */
const entrySchema = z.strictObject({ bowlerId: id, at: instant, by: id });
export type Erasure = z.output<typeof entrySchema>;

export async function addErasure({ erasures }: ShopFolder, entry: Erasure): Promise<void> {
  const file = await open(erasures, "a");
  try {
    await file.writeFile(`${JSON.stringify(entry)}\n`);
    await file.sync();
  } finally {
    await file.close();
  }
  await syncFolder(dirname(erasures));
}

/** @throws {RecordsFault} `damaged` where a whole line of it cannot be read */
export function erasuresOf({ erasures }: ShopFolder): Erasure[] {
  if (!existsSync(erasures)) return [];
  const text = readFileSync(erasures, "utf8");
  // A line that was cut short by a power cut was never acknowledged, and nothing was erased for it.
  return text
    .slice(0, text.lastIndexOf("\n") + 1)
    .split("\n")
    .filter((line) => line !== "")
    .map((line) => read(line, erasures));
}

function read(line: string, path: string): Erasure {
  try {
    return entrySchema.parse(JSON.parse(line));
  } catch (cause) {
    throw new RecordsFault("damaged", path, { cause });
  }
}
