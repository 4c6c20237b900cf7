import { type Ball, ballKept, ballWritten } from "#contract/records/ball";
import { BALL_FIELDS } from "#contract/records/ballFields";
import { termsIn } from "../search/terms.ts";
import { timeOf } from "../session.ts";
import type { Definition, Fields } from "./definition.ts";

export const balls: Definition<Ball> = {
  kind: "balls",
  written: ballWritten,
  kept: ballKept,
  lookups: { bowlerId: "bowlers", state: null, job: null },
  terms: (ball) => termsIn(BALL_FIELDS, ball),
  filledIn: async (fields, before, { now }) => withOwner(fields, before, timeOf(now()).slice(0, 10)),
};

/** A ball that changes hands remembers in whose it was. */
function withOwner(fields: Fields, before: Ball | null, today: string): Fields {
  const owner = fields.bowlerId as string | null;
  const given = fields.owners as Ball["owners"];
  const isTold = before === null ? given.length > 0 : given !== before.owners;
  if (owner === (before?.bowlerId ?? null) || isTold) return before === null ? fields : pickChanged(fields, before);
  const past = (before?.owners ?? []).map((one) => (one.to === null ? { ...one, to: today } : one));
  const owners = owner === null ? past : [...past, { bowlerId: owner, from: today, to: null }];
  return { ...(before === null ? fields : pickChanged(fields, before)), owners };
}

function pickChanged(fields: Fields, before: Ball): Fields {
  return Object.fromEntries(Object.entries(fields).filter(([field, value]) => value !== Reflect.get(before, field)));
}
