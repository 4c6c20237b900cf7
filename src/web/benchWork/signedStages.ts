import type { Ball } from "#contract/records/ball";
import type { StageDone } from "#contract/records/stageDone";
import type { Ticket } from "#contract/records/ticket";
import type { Waiting } from "../shop/outbox.ts";

/** A stage as it was signed. */
export type SignedStage = Pick<StageDone, "what" | "doneAt" | "initials">;

/** A ticket with its ball and what was signed on it. */
export interface OnTheBench {
  readonly ticket: Ticket;
  readonly ball: Ball;
  readonly done: readonly SignedStage[];
}

/** What the shop has, and what is signed in this browser and waits to be sent. */
export function withWaitingStages(ticketId: string, done: readonly SignedStage[], waiting: readonly Waiting[]): readonly SignedStage[] {
  const unsent = waiting.flatMap(({ path, body, refused }): SignedStage[] => {
    if (path !== "/api/stages-done" || refused !== null) return [];
    const stage = body as SignedStage & { readonly ticketId: string };
    const isTaken = done.some(({ what, doneAt }) => what === stage.what && doneAt === stage.doneAt);
    return stage.ticketId !== ticketId || isTaken ? [] : [stage];
  });
  return [...done, ...unsent];
}

/**
 * Who has signed each stage of the work as it is planned now, null where nobody has. Signatures are taken in the order in which they were made, and those
 * of other work are passed over: what was signed twice counts once, and work that was planned anew goes on where it differs.
 */
export function signatures(stages: Ticket["stages"], done: readonly SignedStage[]): readonly (SignedStage | null)[] {
  const signed: SignedStage[] = [];
  for (const one of done.toSorted((a, b) => a.doneAt.localeCompare(b.doneAt)))
    if (signed.length < stages.length && one.what === stages[signed.length].what) signed.push(one);
  return stages.map((_, i) => signed[i] ?? null);
}
