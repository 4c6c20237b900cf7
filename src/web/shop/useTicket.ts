import { useCallback } from "react";
import type { Ball } from "#contract/records/ball";
import type { Bowler } from "#contract/records/bowler";
import type { Ticket } from "#contract/records/ticket";
import type { SignedEntry } from "#contract/records/ticketWork";
import type { Work } from "#engine/signed/work";
import { answered, shop } from "./shopClient.ts";
import { type TicketChange, useTicketWrites, withWaiting } from "./ticketWrites.ts";
import { useOutbox } from "./useOutbox.tsx";
import { useRead, useWrite } from "./useShop.ts";

/** A ticket with all that is said of it at once. */
export interface TicketParts {
  readonly ticket: Ticket;
  readonly ball: Ball;
  readonly bowler: Bowler | null;
  readonly work: Work<SignedEntry>;
}

/** A ticket, with what still waits to be sent for it. */
export function useOneTicket(id: string) {
  const { waiting } = useOutbox();
  const select = useCallback((read: Ticket) => withWaiting(read, waiting), [waiting]);
  return useRead(["tickets", id], () => answered(shop.tickets[":id"].$get({ param: { id } })), { select });
}

/** A ticket with its ball and owner. */
export function useTicket(id: string) {
  const ticket = useOneTicket(id);
  const ballId = ticket.data?.ballId ?? "";
  const bowlerId = ticket.data?.bowlerId ?? "";
  const ball = useRead(["balls", ballId], () => answered(shop.balls[":id"].$get({ param: { id: ballId } })), { enabled: ballId !== "" });
  const bowler = useRead(["bowlers", bowlerId], () => answered(shop.bowlers[":id"].$get({ param: { id: bowlerId } })), {
    enabled: bowlerId !== "",
  });
  return { ticket, ball, bowler };
}

/** What a visit costs, what was paid of it, and which of its balls nobody priced. */
export function useAccount(visitId: string) {
  return useRead(["visits", visitId, "account"], () => answered(shop.visits[":id"].account.$get({ param: { id: visitId } })));
}

/** What has been done on a ticket, in the order it was done. */
export function useStagesDone(ticketId: string) {
  return useRead(["stages-done", ticketId], () =>
    answered(shop["stages-done"].$get({ query: { ticketId, order: "oldest first", limit: "200" } })),
  );
}

/** Changes some fields of a ticket, made on the version that is in view; where the shop is away the change waits. */
export function useChangeTicket(ticket: Ticket) {
  const { change } = useTicketWrites();
  return useWrite((json: TicketChange) => change(ticket, json), ["tickets", "queue"]);
}

/** Moves a ticket; with a reason where it is put back, or ready though work is left. */
export function useMoveTicket(ticket: Ticket) {
  const { move } = useTicketWrites();
  return useWrite(
    ({ to, why }: { readonly to: Ticket["state"]; readonly why?: string }) => move(ticket, to, why),
    ["tickets", "queue", "balls", "visits"],
  );
}
