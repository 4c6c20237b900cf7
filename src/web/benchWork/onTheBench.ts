import type { Ball } from "#contract/records/ball";
import type { StageDoneWritten } from "#contract/records/stageDone";
import type { Ticket } from "#contract/records/ticket";
import { type Signed, type SignedEntry, workOfTicket } from "#contract/records/ticketWork";
import type { Work } from "#engine/signed/work";
import type { Waiting } from "../shop/outbox.ts";

/** A ticket with its ball and what was signed on it. */
export interface OnTheBench {
  readonly ticket: Ticket;
  readonly ball: Ball;
  readonly done: readonly Signed[];
}

/** What a write of this browser says of the work, as it counts until it has been read from the shop; null for any other write. */
export function signedHere({ key, path, body }: Pick<Waiting, "key" | "path" | "body">): (Signed & { readonly ticketId: string }) | null {
  if (path !== "/api/stages-done") return null;
  const written = body as StageDoneWritten;
  return {
    id: key,
    ticketId: written.ticketId,
    stageId: written.stageId ?? null,
    revision: written.revision ?? null,
    kind: written.kind ?? null,
    what: written.what ?? null,
    abrasive: written.abrasive ?? null,
    way: written.way ?? null,
    signs: written.signs ?? true,
    sidesDone: written.sidesDone ?? [],
    sidesAgain: written.sidesAgain ?? [],
    againSeconds: written.againSeconds ?? null,
    began: written.began ?? null,
    cautionsRead: written.cautionsRead ?? [],
    personId: written.personId,
    takesBack: written.takesBack ?? null,
    doneAt: written.doneAt,
    initials: written.initials,
    createdAt: null,
  };
}

/** How the work on a ticket stands, with what this browser has written down and the shop has not got yet. */
export function workHere(ticket: Ticket, done: readonly Signed[], waiting: readonly Waiting[]): Work<SignedEntry> {
  const unsent = waiting.flatMap((write): Signed[] => {
    const entry = write.refused === null ? signedHere(write) : null;
    if (entry === null || entry.ticketId !== ticket.id) return [];
    // Between being taken and being read again it is both here and there.
    return done.some(({ doneAt, stageId }) => doneAt === entry.doneAt && stageId === entry.stageId) ? [] : [entry];
  });
  return workOfTicket(ticket, [...done, ...unsent]);
}
