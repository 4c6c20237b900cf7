import { randomBytes } from "node:crypto";
import type { ShopParts } from "./openShop.ts";
import { programVersion } from "./version.ts";

/** What a shop wants of this machine. */
export function shopPartsHere(): ShopParts {
  return { now: Date.now, randomBytes, programVersion: programVersion(), say: (words) => console.log(words) };
}
