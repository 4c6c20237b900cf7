import { priceKept, priceWritten } from "#contract/records/money";
import { personKept, personWritten } from "#contract/records/person";
import { houseKept, houseWritten, laneKept, laneWritten, patternKept, patternWritten } from "#contract/records/place";
import { readingKept, readingWritten } from "#contract/records/reading";
import { shotNoteKept, shotNoteWritten } from "#contract/records/shotNote";
import { referenceBallKept, referenceBallWritten } from "#contract/records/stock";
import { visitKept, visitWritten } from "#contract/records/visit";
import type { Problem } from "#engine/fault";
import { lastOwnerProblem } from "../accounts/owners.ts";
import type { Definition } from "./definition.ts";
import { settingsKind } from "./settings.ts";
import { store } from "./store.ts";

/*
 * Kinds that need no more than their schema and what they are looked up by.
 */

function plainKind<Thing extends { id: string; shopId: string; version: number; createdAt: string; changedAt: string }>(
  definition: Definition<Thing>,
): Definition<Thing> {
  return definition;
}

/** Nothing is promised for a time before the balls came. */
export function promiseProblems(promisedFor: string | null, cameAt: string): Problem[] {
  if (promisedFor === null || Date.parse(promisedFor) >= Date.parse(cameAt)) return [];
  return [{ path: "promisedFor", value: promisedFor, allowed: `not before ${cameAt}, when it came` }];
}

export const people = plainKind({
  kind: "people",
  written: personWritten,
  kept: personKept,
  lookups: { state: null },
  rescue: { name: "?", initials: "?" },
  async check({ id, state }, before, session) {
    if (state === "works here" || before?.state === state) return [];
    const problem = await lastOwnerProblem(session, id, "state", state);
    return problem === null ? [] : [problem];
  },
});
export const visits = plainKind({
  kind: "visits",
  written: visitWritten,
  kept: visitKept,
  lookups: { bowlerId: "bowlers", state: null },
  check: async ({ promisedFor, arrivedAt }, before) => (before?.promisedFor === promisedFor ? [] : promiseProblems(promisedFor, arrivedAt)),
  /** What is settled on later changes no bill that is there. */
  async filledIn({ taxRounding, taxIncluded }, before, session) {
    if (taxRounding !== null && taxIncluded !== null) return {};
    const usual = before ?? (await store(session, settingsKind).get(session.shopId));
    return { taxRounding: taxRounding ?? usual.taxRounding, taxIncluded: taxIncluded ?? usual.taxIncluded };
  },
});
export const houses = plainKind({ kind: "houses", written: houseWritten, kept: houseKept, lookups: {} });
export const lanes = plainKind({ kind: "lanes", written: laneWritten, kept: laneKept, lookups: { houseId: "houses" } });
export const patterns = plainKind({ kind: "patterns", written: patternWritten, kept: patternKept, lookups: { houseId: "houses" } });
export const prices = plainKind({ kind: "prices", written: priceWritten, kept: priceKept, lookups: {} });
export const referenceBalls = plainKind({
  kind: "referenceBalls",
  written: referenceBallWritten,
  kept: referenceBallKept,
  lookups: {},
});
export const readings = plainKind({
  kind: "readings",
  written: readingWritten,
  kept: readingKept,
  lookups: { ballId: "balls", ticketId: "tickets", referenceBallId: "referenceBalls", profileFileId: "profileFiles" },
});
export const shotNotes = plainKind({
  kind: "shotNotes",
  written: shotNoteWritten,
  kept: shotNoteKept,
  lookups: {
    bowlerId: "bowlers",
    ballId: "balls",
    houseId: "houses",
    laneId: "lanes",
    patternId: "patterns",
    ticketId: "tickets",
  },
});
