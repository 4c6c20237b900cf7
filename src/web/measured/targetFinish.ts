import type { Reading } from "#contract/records/reading";
import type { Ticket } from "#contract/records/ticket";
import type { SignedEntry } from "#contract/records/ticketWork";
import { isSurfaceDone, type Work } from "#engine/signed/work";
import { finishText } from "#engine/surface/finish";

/**
 * The finish that sides are held against: while work on the surface is left the one that was signed last, for no more was done; then the one that was asked for.
 * Null before the work, and where there is none: they are held against each other.
 */
export function targetFinish(
  when: Reading["when"],
  ticket: Pick<Ticket, "finishAfter"> | null,
  work: Work<SignedEntry> | null,
): string | null {
  if (when !== "after" || ticket === null) return null;
  if (work === null || isSurfaceDone(work)) return ticket.finishAfter;
  return work.finish === null ? null : finishText(work.finish);
}
