import { restoreBackup } from "#records/backup/restoreBackup";
import { isAddress } from "#records/database/address";
import { RECORDS } from "#words/en/records";
import { recordsParts, wordsFor } from "./openShop.ts";
import type { Options } from "./options.ts";
import type { ExitCode, World } from "./world.ts";

/** `gritwright restore FILE FOLDER`, or an address in place of the folder: puts a backup in the place of a shop's records, which stay beside it. */
export async function restore(words: readonly string[], options: Options, world: World): Promise<ExitCode> {
  const [path, place] = wordsFor(words, "restore", ["FILE", "FOLDER"]);
  const where = isAddress(place) ? { folder: "", address: place, shop: null } : { folder: place, address: null, shop: null };
  const { report, safetyCopy } = await restoreBackup(path, recordsParts(where, world));
  if (options.json) world.print(`${JSON.stringify({ gritwright: 1, kind: "restored", report, safetyCopy }, null, 2)}\n`);
  else world.print(`${[RECORDS.restored(report.madeAt), ...(safetyCopy === null ? [] : [RECORDS.safety(safetyCopy)])].join("\n")}\n`);
  return 0;
}
