import { join } from "node:path";
import type { Config, PlacedConfig } from "../config/configSchema.ts";
import { endMove, moveShop } from "./moveShop.ts";
import { SHOP_FOLDERS, whichFolder } from "./whichFolder.ts";

export interface PlaceParts {
  /** The folder for this user's data. */
  readonly users: string;
  /** Folders in which an older one may lie. */
  readonly startedFrom: readonly string[];
  /** `2026-05-31`; part of the name of what is set aside. */
  readonly today: string;
  /** Whether a folder that is found is to be moved; asked where somebody sits there and has not said. */
  readonly move: () => Promise<boolean>;
  readonly say: (words: string) => void;
}

/**
 * The configuration with the folder in which the shop lies: the one that is stated, else the user's own; a shop in an older folder is moved there where
 * that is wanted, and else opened where it is.
 *
 * @throws {RecordsFault} as `moveShop`
 */
export async function placed(config: Config, parts: PlaceParts): Promise<PlacedConfig> {
  return { ...config, data: config.data ?? (await folderOf(config, parts)) };
}

async function folderOf({ shop }: Config, { users, startedFrom, today, move, say }: PlaceParts): Promise<string> {
  const which = whichFolder(shop, users, startedFrom);
  const name = SHOP_FOLDERS[shop];
  if (which.kind === "users") return users;
  if (which.kind === "older") {
    const [from, to] = [join(which.folder, name), join(users, name)];
    say(`This shop lies in ${from}: whoever deletes the folder around it deletes the shop. Its place is now ${to}.`);
    if (!(await move())) {
      say("Opened where it is. To move it: stop the server, and start it once with --move-records.");
      return which.folder;
    }
    say(
      `Moved, and each file compared. What was copied lies in ${await moveShop(from, to, today)}: delete it once you have seen everything.`,
    );
    return users;
  }
  const older = join(which.older, name);
  const aside = which.kind === "half moved" ? await endMove(older, join(users, name), today) : null;
  if (aside !== null) say(`The move from ${older} has been ended. What was copied lies in ${aside}.`);
  else say(`Opened is the shop in ${join(users, name)}. Another lies in ${older}, and is not opened: --data ${which.older} opens it.`);
  return users;
}
