import type { Ticket } from "#contract/records/ticket";
import type { TicketState } from "#contract/records/ticketStates";
import { WAITING } from "#words/en/rooms/frame";
import { TICKET_STATE_WORDS } from "#words/en/rooms/today";
import type { Outbox, Waiting } from "./outbox.ts";
import { answered, madeOn, newKey, ShopFault, shop } from "./shopClient.ts";
import { useOutbox } from "./useOutbox.tsx";

export type TicketChange = Parameters<(typeof shop.tickets)[":id"]["$patch"]>[0]["json"];

/** A ticket with what still waits to be sent for it: what was decided while the server is away stays decided on this screen. */
export function withWaiting(ticket: Ticket, waiting: readonly Waiting[]): Ticket {
  let seen = ticket;
  for (const { path, body, version, refused } of waiting) {
    if (refused !== null || !isOf(path, ticket.id) || version !== seen.version) continue;
    const fields = path.endsWith("/move") ? { state: (body as { to: TicketState }).to } : (body as Partial<Ticket>);
    seen = { ...seen, ...fields, version: seen.version + 1 };
  }
  return seen;
}

function isOf(path: string, ticketId: string): boolean {
  return path === `/api/tickets/${ticketId}` || path === `/api/tickets/${ticketId}/move`;
}

/** Changes and moves of tickets that may wait: sent at once where the shop answers, else kept in the outbox. Each gives the ticket as it then stands. */
export function useTicketWrites() {
  const { outbox } = useOutbox();
  return {
    change(ticket: Ticket, json: TicketChange): Promise<Ticket> {
      const param = { id: ticket.id };
      const change = { key: newKey(), method: "PATCH", path: `/api/tickets/${ticket.id}`, body: json, what: WAITING.ticketChange } as const;
      return sendOrWait(outbox, ticket, change, (once) =>
        answered(shop.tickets[":id"].$patch({ param, json, header: madeOn(ticket) }, once)),
      );
    },
    /** @param why where it is put back, the reason */
    move(ticket: Ticket, to: TicketState, why = ""): Promise<Ticket> {
      const param = { id: ticket.id };
      const what = WAITING.ticketMove(TICKET_STATE_WORDS[to]);
      const move = { key: newKey(), method: "POST", path: `/api/tickets/${ticket.id}/move`, body: { to, why }, what } as const;
      return sendOrWait(outbox, ticket, move, (once) =>
        answered(shop.tickets[":id"].move.$post({ param, json: { to, why }, header: madeOn(ticket) }, once)),
      );
    },
  };
}

type Once = { readonly headers: { readonly "Idempotency-Key": string } };

/** What waits already goes first: the order of changes is kept. */
async function sendOrWait(
  outbox: Outbox,
  ticket: Ticket,
  write: Pick<Waiting, "key" | "method" | "path" | "body" | "what">,
  send: (once: Once) => Promise<Ticket>,
): Promise<Ticket> {
  const before = outbox.snapshot().some(({ path, refused }) => refused === null && isOf(path, ticket.id));
  try {
    if (!before) return await send({ headers: { "Idempotency-Key": write.key } });
  } catch (fault) {
    // Where the session has ended it waits like everything else, until the same person has signed in again.
    if (!(fault instanceof ShopFault) || (fault.problem !== null && !fault.isKind("notSignedIn"))) throw fault;
  }
  outbox.add({ ...write, version: ticket.version });
  return withWaiting(ticket, outbox.snapshot());
}
