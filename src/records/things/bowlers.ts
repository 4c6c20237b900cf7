import { type Bowler, bowlerKept, bowlerWritten } from "#contract/records/bowler";
import { BOWLER_FIELDS } from "#contract/records/bowlerFields";
import { termsIn } from "../search/terms.ts";
import type { Definition } from "./definition.ts";

export const bowlers: Definition<Bowler> = {
  kind: "bowlers",
  written: bowlerWritten,
  kept: bowlerKept,
  lookups: {},
  terms: (bowler) => (bowler.erasedAt === null ? termsIn(BOWLER_FIELDS, bowler) : []),
};
