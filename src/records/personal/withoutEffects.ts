import type { Kept } from "#contract/records/fields";
import type { Definition } from "../things/definition.ts";

/** Work that is only emptied takes nothing from the stock again, and money that is counted already is not counted twice. */
export function withoutEffects<Thing extends Kept>({ kind, written, kept, lookups, terms }: Definition<Thing>): Definition<Thing> {
  return { kind, written, kept, lookups, ...(terms === undefined ? {} : { terms }) };
}
