import type { Ticket } from "#contract/records/ticket";
import { answered, madeOn, shop } from "../../shop/shopClient.ts";
import { useRead, useWrite } from "../../shop/useShop.ts";

/** A ticket with its ball and owner. */
export function useTicket(id: string) {
  const ticket = useRead(["tickets", id], () => answered(shop.tickets[":id"].$get({ param: { id } })));
  const ballId = ticket.data?.ballId ?? "";
  const bowlerId = ticket.data?.bowlerId ?? "";
  const ball = useRead(["balls", ballId], () => answered(shop.balls[":id"].$get({ param: { id: ballId } })), { enabled: ballId !== "" });
  const bowler = useRead(["bowlers", bowlerId], () => answered(shop.bowlers[":id"].$get({ param: { id: bowlerId } })), {
    enabled: bowlerId !== "",
  });
  return { ticket, ball, bowler };
}

/** What has been done on a ticket, in the order it was done. */
export function useStagesDone(ticketId: string) {
  return useRead(["stages-done", ticketId], () =>
    answered(shop["stages-done"].$get({ query: { ticketId, order: "oldest first", limit: "200" } })),
  );
}

type Change = Parameters<(typeof shop.tickets)[":id"]["$patch"]>[0]["json"];

/** Changes some fields of a ticket, made on the version that is in view. */
export function useChangeTicket(ticket: Ticket) {
  return useWrite(
    (json: Change) => answered(shop.tickets[":id"].$patch({ param: { id: ticket.id }, json, header: madeOn(ticket) })),
    ["tickets", "queue"],
  );
}

export function useMoveTicket(ticket: Ticket) {
  return useWrite(
    (to: Ticket["state"]) => answered(shop.tickets[":id"].move.$post({ param: { id: ticket.id }, json: { to }, header: madeOn(ticket) })),
    ["tickets", "queue", "balls"],
  );
}
