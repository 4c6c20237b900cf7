import type { Ball } from "#contract/records/ball";
import type { StageDone } from "#contract/records/stageDone";
import type { Ticket } from "#contract/records/ticket";
import type { Waiting } from "../shop/outbox.ts";

/** A stage as it was signed. */
export interface SignedStage extends Pick<StageDone, "what" | "doneAt" | "initials"> {
  /** When the shop was told; null while it waits in this browser. */
  readonly createdAt: string | null;
}

/** A ticket with its ball and what was signed on it. */
export interface OnTheBench {
  readonly ticket: Ticket;
  readonly ball: Ball;
  readonly done: readonly SignedStage[];
}

/** The stage that a write of this browser signs, as it counts until it has been read from the shop; null for any other write. */
export function signedHere({ path, body }: Pick<Waiting, "path" | "body">): (SignedStage & { readonly ticketId: string }) | null {
  if (path !== "/api/stages-done") return null;
  return { ...(body as Omit<SignedStage, "createdAt"> & { readonly ticketId: string }), createdAt: null };
}

/** What the shop has, and what is signed in this browser and waits to be sent. */
export function withWaitingStages(ticketId: string, done: readonly SignedStage[], waiting: readonly Waiting[]): readonly SignedStage[] {
  const unsent = waiting.flatMap((write): SignedStage[] => {
    const stage = write.refused === null ? signedHere(write) : null;
    if (stage === null) return [];
    const isTaken = done.some(({ what, doneAt }) => what === stage.what && doneAt === stage.doneAt);
    return stage.ticketId !== ticketId || isTaken ? [] : [stage];
  });
  return [...done, ...unsent];
}

/**
 * Who has signed each stage of the work as it is planned now, null where nobody has. Signatures are taken in the order in which they were made, and those
 * of other work are passed over: what was signed twice counts once, and work that was planned anew goes on where it differs. On a ball that came back what
 * was signed before counts no more: its work is done again, from the first stage.
 */
export function signatures(
  { stages, been }: Pick<Ticket, "stages" | "been">,
  done: readonly SignedStage[],
): readonly (SignedStage | null)[] {
  const cameBack = been.findLast(({ state }) => state === "rework")?.at ?? "";
  const signed: SignedStage[] = [];
  // Both times are the shop's own; that of the signature is of whichever clock the bench has.
  const counting = done.filter(({ createdAt }) => createdAt === null || createdAt >= cameBack);
  for (const one of counting.toSorted((a, b) => a.doneAt.localeCompare(b.doneAt)))
    if (signed.length < stages.length && one.what === stages[signed.length].what) signed.push(one);
  return stages.map((_, i) => signed[i] ?? null);
}

/** How many stages of a ticket's work are signed, with what waits in this browser. */
export function countSigned(ticket: Ticket, done: readonly SignedStage[], waiting: readonly Waiting[]): number {
  return signatures(ticket, withWaitingStages(ticket.id, done, waiting)).filter((one) => one !== null).length;
}
