import type { Reading } from "#contract/records/reading";
import type { SignedEntry } from "#contract/records/ticketWork";
import type { Work } from "#engine/signed/work";
import { isSide } from "#engine/surface/readings/places";
import type { ReadingHere } from "../shop/readingsHere.ts";
import type { Comparison, Way } from "./entries.ts";

/** What was read at one place, by one way, of the surface that is there. */
export interface Read {
  readonly um: readonly number[];
  readonly comparison: Comparison | null;
}

/** Which readings are looked at together. */
export interface Asked {
  readonly when: Reading["when"];
  readonly ticketId: string | null;
  /** Of a ball without a ticket: since when. */
  readonly from: string;
  readonly how: Way;
  /** The work of the ticket: what was read of a side before it was worked again is of another surface. */
  readonly work: Work<SignedEntry> | null;
  /** When sides were put back to be worked again. */
  readonly again: readonly { readonly at: string; readonly sides: readonly string[] }[];
}

/** The readings that speak of the surface as it is now, by the way that is asked for. */
export function readingsNow(all: readonly ReadingHere[], { when, ticketId, from, how, work, again }: Asked): readonly ReadingHere[] {
  return all.filter((one) => {
    if (one.how !== how || one.when !== when || one.ticketId !== ticketId) return false;
    if (ticketId === null) return one.at >= from;
    return when !== "after" || one.at > lastWorked(one.place, work, again);
  });
}

function lastWorked(place: string, work: Work<SignedEntry> | null, again: Asked["again"]): string {
  const signed = (work?.surface ?? []).filter(({ sidesDone }) =>
    isSide(place) ? sidesDone.length === 0 || sidesDone.includes(place) : true,
  );
  const times = [...signed.map(({ at }) => at), ...again.filter(({ sides }) => sides.includes(place)).map(({ at }) => at)];
  return times.toSorted().at(-1) ?? "";
}

/** Of one place: every figure, or how it last looked. */
export function readAt(now: readonly ReadingHere[], place: string): Read | null {
  const here = now.filter((one) => one.place === place).toSorted((a, b) => a.at.localeCompare(b.at) || a.id.localeCompare(b.id));
  if (here.length === 0) return null;
  return {
    um: here.flatMap(({ raUm }) => raUm ?? []),
    comparison: here.findLast(({ comparison }) => comparison !== null)?.comparison ?? null,
  };
}

export function meanOf(um: readonly number[]): number | null {
  return um.length === 0 ? null : um.reduce((sum, one) => sum + one, 0) / um.length;
}

/** The reading of the surface that was taken last of a ticket, or since a day of a ball without one; null where none was. */
export function lastTaken(
  all: readonly ReadingHere[],
  ticketId: string | null,
  from: string,
): (ReadingHere & { readonly how: Way }) | null {
  const ofIt = all.filter((one): one is ReadingHere & { readonly how: Way } => isWay(one.how) && one.ticketId === ticketId);
  return (
    ofIt
      .filter(({ at }) => ticketId !== null || at >= from)
      .toSorted((a, b) => a.at.localeCompare(b.at))
      .at(-1) ?? null
  );
}

function isWay(how: Reading["how"]): how is Way {
  return how === "tester" || how === "reference ball";
}

/** The readings that were written down last, in one go: what *undo* takes back. */
export function lastGo(now: readonly ReadingHere[]): readonly ReadingHere[] {
  const newest = now
    .map(({ at }) => at)
    .toSorted()
    .at(-1);
  return now.filter(({ at }) => at === newest);
}
