import { addShopTo, shopsOf } from "#records/shopsOf";
import { RECORDS } from "#words/en/records";
import { wordsFor } from "./openShop.ts";
import type { Options } from "./options.ts";
import type { ExitCode, World } from "./world.ts";

/** `gritwright shops PLACE`: the shops that share a database; with `--add NAME` one more. */
export async function shops(words: readonly string[], { add, json }: Options, world: World): Promise<ExitCode> {
  const [place] = wordsFor(words, "shops", ["FOLDER"]);
  const parts = { place, now: world.now, randomBytes: world.randomBytes };
  const added = add === null ? null : await addShopTo(parts, add);
  const all = await shopsOf(parts);
  if (json) world.print(`${JSON.stringify({ gritwright: 1, kind: "shops", added, shops: all }, null, 2)}\n`);
  else if (added !== null) world.print(`${RECORDS.shopAdded(added.name, added.id)}\n`);
  else world.print(`${all.length === 0 ? RECORDS.noShops : all.map(({ name, id }) => RECORDS.shop(name, id)).join("\n")}\n`);
  return 0;
}
