import { existsSync } from "node:fs";
import { join, resolve } from "node:path";
import { movedFrom } from "./movedFrom.ts";

/** Folders of the shops, in that of all. */
export const SHOP_FOLDERS = { own: "shop", demonstration: "demonstration" } as const;

/** What the folder of all shops was called before it lay with the user, in the folder that the program was started from. */
export const OLDER_NAME = "gritwright-data";

export type Which =
  | { readonly kind: "users"; readonly folder: string }
  /** The shop lies in an older folder alone: it is opened there, and offered to be moved. */
  | { readonly kind: "older"; readonly folder: string }
  /** A move was cut after the shop had been put in its new place: what is left is set aside. */
  | { readonly kind: "half moved"; readonly folder: string; readonly older: string }
  /** Both hold one: the user's own is opened, and the other is told of. */
  | { readonly kind: "both"; readonly folder: string; readonly older: string };

/**
 * In which folder the shop that is asked for lies, or is to be made. An older folder is never passed over in silence: whoever has a shop in it would find
 * an empty one, and think that everything is lost.
 *
 * @param users the folder for this user's data
 * @param startedFrom folders in which an older one may lie: the present one, the program's own
 */
export function whichFolder(shop: keyof typeof SHOP_FOLDERS, users: string, startedFrom: readonly string[]): Which {
  const name = SHOP_FOLDERS[shop];
  const older = startedFrom.map((place) => resolve(place, OLDER_NAME)).find((folder) => existsSync(join(folder, name)));
  const isThere = existsSync(join(users, name));
  if (older === undefined || resolve(older) === resolve(users)) return { kind: "users", folder: users };
  if (!isThere) return { kind: "older", folder: older };
  const kind = movedFrom(join(users, name))?.from === resolve(older, name) ? "half moved" : "both";
  return { kind, folder: users, older };
}
