import { RECORDS } from "#words/en/records";
import { fixed } from "#words/figures";
import { withRecords, wordsFor } from "./openShop.ts";
import type { Options } from "./options.ts";
import type { ExitCode, World } from "./world.ts";

/** `gritwright backup FOLDER`: makes a backup of a shop's records while they may be in use; with `--due` the scheduled one, where it is time. */
export async function backup(words: readonly string[], options: Options, world: World): Promise<ExitCode> {
  const [folder] = wordsFor(words, "backup", ["FOLDER"]);
  return withRecords<ExitCode>(folder, world, async ({ backups }) => {
    const { made, takenOut } = options.due ? await backups.keepUp() : { made: await backups.make("asked"), takenOut: [] };
    if (options.json) world.print(`${JSON.stringify({ gritwright: 1, kind: "backupMade", made, takenOut }, null, 2)}\n`);
    else {
      world.print(`${made === null ? RECORDS.notDue : RECORDS.backup(await backups.path(made.name), fixed(made.bytes / 1e6, 2))}\n`);
      if (takenOut.length > 0) world.print(`${RECORDS.takenOut(takenOut.length)}\n`);
    }
    return 0;
  });
}
