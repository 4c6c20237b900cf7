import type { ThingKind } from "#contract/records/auditEntry";
import type { Fields } from "../things/definition.ts";
import { coverNotKnown } from "./coverNotKnown.ts";
import { inMillipercent } from "./inMillipercent.ts";
import { onOneLine } from "./onOneLine.ts";
import { stageIds } from "./stageIds.ts";

/**
 * Makes of what an older program kept what the next one keeps: the JSON of one thing, without its ids and times. Frozen once it is released: it knows
 * nothing of today's schemas, and a test runs it over what was kept then. New fields with a default need none.
 */
export type Upgrade = (body: Fields) => Fields;

/** Of each kind in the order of the versions: the first makes version 2 of version 1. */
export const UPGRADES: Readonly<Record<ThingKind, readonly Upgrade[]>> = {
  people: [onOneLine],
  bowlers: [onOneLine],
  balls: [onOneLine, coverNotKnown],
  visits: [onOneLine, inMillipercent],
  tickets: [onOneLine, stageIds],
  stagesDone: [onOneLine],
  readings: [onOneLine],
  photos: [onOneLine],
  profileFiles: [onOneLine],
  houses: [onOneLine],
  lanes: [onOneLine],
  patterns: [onOneLine],
  shotNotes: [onOneLine],
  referenceBalls: [onOneLine],
  stockItems: [onOneLine],
  stockMovements: [onOneLine],
  prices: [onOneLine, inMillipercent],
  payments: [onOneLine],
  prepaid: [onOneLine],
  settings: [onOneLine, inMillipercent],
};

/** What is written today. */
export function schemaVersionOf(kind: ThingKind): number {
  return 1 + UPGRADES[kind].length;
}

/**
 * What was kept, as today's program keeps it. What a newer program kept is left as it is.
 *
 * @param version with which it was written, from 1
 */
export function upgraded(kind: ThingKind, body: Fields, version: number): Fields {
  return UPGRADES[kind].slice(version - 1).reduce((older, upgrade) => upgrade(older), body);
}
