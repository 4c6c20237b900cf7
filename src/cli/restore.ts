import { RecordsFault } from "#contract/records/fault";
import { restoreBackup } from "#records/backup/restoreBackup";
import { isAddress } from "#records/database/address";
import { RECORDS } from "#words/en/records";
import { recordsParts, wordsFor } from "./openShop.ts";
import type { Options } from "./options.ts";
import type { ExitCode, World } from "./world.ts";

/**
 * `gritwright restore FILE FOLDER`, or an address in place of the folder: puts a backup in the place of a shop's records, which stay beside it; with
 * `--without-lost-files` also where photos or files of it are missing or damaged, and those are named.
 */
export async function restore(words: readonly string[], options: Options, world: World): Promise<ExitCode> {
  const [path, place] = wordsFor(words, "restore", ["FILE", "FOLDER"]);
  const where = isAddress(place) ? { folder: "", address: place, shop: null } : { folder: place, address: null, shop: null };
  const parts = { ...recordsParts(where, world), withoutLost: options.withoutLostFiles };
  const { report, safetyCopy, leftOut } = await restoreBackup(path, parts).catch((fault: unknown) => {
    throw withHint(fault);
  });
  if (options.json) world.print(`${JSON.stringify({ gritwright: 1, kind: "restored", report, safetyCopy, leftOut }, null, 2)}\n`);
  else {
    const lost = leftOut.length === 0 ? [] : [RECORDS.restoredWithout(leftOut.length), ...leftOut.map(RECORDS.restoredWithoutOne)];
    world.print(`${[RECORDS.restored(report.madeAt), ...lost, ...(safetyCopy === null ? [] : [RECORDS.safety(safetyCopy)])].join("\n")}\n`);
  }
  return 0;
}

/** Where only photos or files beside the backup keep it from being restored, there is a way. */
function withHint(fault: unknown): unknown {
  if (!(fault instanceof RecordsFault) || fault.kind !== "badBackup" || fault.problems[0]?.path !== "blobs") return fault;
  const hint = { path: "--without-lost-files", value: null, allowed: RECORDS.mayRestoreWithout };
  return new RecordsFault(fault.kind, fault.about, { cause: fault, problems: [...fault.problems, hint] });
}
