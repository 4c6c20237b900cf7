import { type Bowler, bowlerKept, bowlerWritten } from "#contract/records/bowler";
import { digitsOf, withEnds, wordsOf } from "../search/terms.ts";
import type { Definition } from "./definition.ts";

export const bowlers: Definition<Bowler> = {
  kind: "bowlers",
  written: bowlerWritten,
  kept: bowlerKept,
  lookups: {},
  terms: ({ name, phone, guardian, erasedAt }) =>
    erasedAt === null ? [...wordsOf(name), ...[phone, guardian?.phone].flatMap((number) => withEnds(digitsOf(number ?? "")))] : [],
};
