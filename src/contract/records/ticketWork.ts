import type { PlannedStage, WorkEntry } from "#engine/signed/entries";
import { type Work, workOf } from "#engine/signed/work";
import type { StageDone } from "./stageDone.ts";
import type { Ticket } from "./ticket.ts";
import type { TicketState } from "./ticketStates.ts";

/** Name of a planned stage: the plan of the ticket that it is in, and its place there. */
export function stageId(revision: number, place: number): string {
  return `${revision}-${place}`;
}

/** What is known of a signature, also while it waits in a browser and the shop has not got it yet. */
export type Signed = Pick<
  StageDone,
  | "stageId"
  | "revision"
  | "kind"
  | "what"
  | "abrasive"
  | "way"
  | "signs"
  | "sidesDone"
  | "sidesAgain"
  | "againSeconds"
  | "began"
  | "cautionsRead"
  | "takesBack"
  | "doneAt"
  | "initials"
  | "personId"
> & {
  readonly id: string;
  /** When the shop was told; null while it waits. */
  readonly createdAt: string | null;
};

/** A signature as an entry of the work. */
export interface SignedEntry extends WorkEntry {
  readonly initials: string;
  readonly personId: string;
  /** How it was worked: wet or dry, spinner or hand; null where nobody says. */
  readonly way: StageDone["way"];
}

/**
 * How the work on a ticket stands: the one answer for server, page, papers, stock and log. On a ball that came back what was signed before counts no more.
 *
 * @param done all that was written down at the bench for this ticket, in any order
 */
export function workOfTicket({ stages, been }: Pick<Ticket, "stages" | "been">, done: readonly Signed[]): Work<SignedEntry> {
  const cameBack = been.findLast(({ state }) => state === "rework")?.at ?? "";
  // Both times are the shop's own; that of the signature is of whichever clock the bench has.
  const counting = done.filter(({ createdAt }) => createdAt === null || createdAt >= cameBack);
  return workOf(stages.map(plannedOf), counting.map(entryOf));
}

function plannedOf({ id, kind, abrasive, sideIds, what }: Ticket["stages"][number]): PlannedStage {
  return { id, kind, abrasive, sideIds, label: what ?? "" };
}

/** Which device began a side last goes by the shop's own clock, whatever the devices' say; what waits in this browser comes after it. */
function entryOf({ doneAt, what, ...rest }: Signed): SignedEntry {
  const at = rest.began === null ? doneAt : (rest.createdAt ?? NOT_SENT_YET);
  return { ...rest, at, label: what ?? "" };
}

const NOT_SENT_YET = "9999-12-31T00:00:00.000Z";

/** States among which signatures move a ticket. What waits for somebody's word, or has left, only a person moves. */
const MOVED_BY_SIGNING: readonly TicketState[] = ["received", "waiting for approval", "in work", "drying", "ready", "rework"];

/**
 * Where a ticket stands by what was signed: in work from the first of it, drying while the next stage is to rest, ready once nothing is left. Where nothing is
 * signed, or all of it was taken back, where somebody last put it; ready it is not while work is planned.
 */
export function stateBySigning({ state, been }: Pick<Ticket, "state" | "been">, work: Work<SignedEntry>): TicketState {
  if (!MOVED_BY_SIGNING.includes(state) || work.stages.length === 0) return state;
  if (work.signed.length + work.sides.length === 0) return putLast(been, work.next !== null) ?? state;
  if (work.next === null) return "ready";
  return work.next.stage.kind === "dryOff" && work.signed.length > 0 ? "drying" : "in work";
}

/** The last state that somebody put a ticket in. */
function putLast(been: Ticket["been"], isLeft: boolean): TicketState | null {
  return been.findLast(({ state, signedVersion }) => signedVersion === null && !(isLeft && state === "ready"))?.state ?? null;
}

/** Whether work is planned that nobody has signed, so that a ball is not ready unless somebody says why it is. */
export function isWorkLeft({ stages, been }: Pick<Ticket, "stages" | "been">, done: readonly Signed[]): boolean {
  return workOfTicket({ stages, been }, done).next !== null;
}

/** Whether all that happened to a ticket since a version is that signatures moved it: a change made on that version knew everything else. */
export function isOnlyMovedSince({ been, version }: Pick<Ticket, "been" | "version">, since: number): boolean {
  const moved = new Set(been.map(({ signedVersion }) => signedVersion));
  return since <= version && Array.from({ length: version - since }, (_, i) => since + i + 1).every((one) => moved.has(one));
}
