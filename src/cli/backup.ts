import { join } from "node:path";
import { isAddress } from "#records/database/address";
import { shopFolder } from "#records/folder";
import { shopsOf } from "#records/shopsOf";
import { RECORDS } from "#words/en/records";
import { fixed } from "#words/figures";
import { mustHoldShop, type Place, withPlace, wordsFor } from "./openShop.ts";
import type { Options } from "./options.ts";
import { usageFault } from "./usageFault.ts";
import type { ExitCode, World } from "./world.ts";

/**
 * `gritwright backup FOLDER`, or `backup ADDRESS FOLDER` for a PostgreSQL database: makes a backup of a shop's records while they may be in use;
 * with `--due` the scheduled one, where it is time; with `--whole` one file that is kept elsewhere by itself. One that does not read back is none, and
 * ends with 3.
 */
export async function backup(words: readonly string[], options: Options, world: World): Promise<ExitCode> {
  if (options.due && options.whole) throw usageFault("--due and --whole do not go together.", "--due, or --whole");
  const place = await withAnyShop(placeOf(words, options), world);
  return withPlace<ExitCode>(place, world, async ({ backups }) => {
    const { made, takenOut } = options.due
      ? await backups.keepUp()
      : { made: await backups.make("asked", options.whole ? "whole" : "sharing"), takenOut: [] };
    if (options.json) world.print(`${JSON.stringify({ gritwright: 1, kind: "backupMade", made, takenOut }, null, 2)}\n`);
    else {
      const text =
        made === null ? RECORDS.notDue : RECORDS.backup(join(shopFolder(place.folder).backups, made.name), fixed(made.bytes / 1e6, 2));
      world.print(`${text}\n`);
      if (takenOut.length > 0) world.print(`${RECORDS.takenOut(takenOut.length)}\n`);
    }
    return 0;
  });
}

/** A backup holds every shop of a database; which of them is opened for it does not matter, but one is. */
async function withAnyShop(place: Place, world: World): Promise<Place> {
  await mustHoldShop(place, world);
  if (place.shop !== null) return place;
  const [first] = await shopsOf({ place: place.address ?? place.folder, ...world });
  return { ...place, shop: first?.id ?? null };
}

function placeOf(words: readonly string[], { shop }: Options): Place {
  if (!isAddress(words[0])) {
    const [folder] = wordsFor(words, "backup", ["FOLDER"]);
    return { folder, address: null, shop };
  }
  const [address, folder] = wordsFor(words, "backup", ["ADDRESS", "FOLDER"]);
  return { folder, address, shop };
}
