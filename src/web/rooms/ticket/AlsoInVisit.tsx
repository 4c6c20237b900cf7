import { Link } from "wouter";
import type { Ticket } from "#contract/records/ticket";
import { TICKET } from "#words/en/rooms/ticket";
import { TICKET_STATE_WORDS } from "#words/en/rooms/today";
import { FinishSwatch } from "../../pieces/FinishSwatch.tsx";
import { answered, shop } from "../../shop/shopClient.ts";
import { useRead } from "../../shop/useShop.ts";

/** The other balls of the visit; nothing where there is none. */
export function AlsoInVisit({ ticket }: { readonly ticket: Ticket }) {
  const tickets = useRead(["tickets", "of visit", ticket.visitId], () =>
    answered(shop.tickets.$get({ query: { visitId: ticket.visitId, limit: "50" } })),
  ).data?.items;
  const others = (tickets ?? []).filter(({ id }) => id !== ticket.id);
  if (others.length === 0) return null;
  return (
    <section className="plate">
      <h2>{TICKET.otherTickets}</h2>
      <ul className="found">
        {others.map((other) => (
          <Other key={other.id} ticket={other} />
        ))}
      </ul>
    </section>
  );
}

function Other({ ticket: { id, ballId, finishAfter, state } }: { readonly ticket: Ticket }) {
  const ball = useRead(["balls", ballId], () => answered(shop.balls[":id"].$get({ param: { id: ballId } }))).data;
  const name = ball?.name ?? "–";
  return (
    <li>
      <Link href={`/tickets/${id}`}>
        {finishAfter !== null && <FinishSwatch finish={finishAfter} />}
        <span className="other-name">{finishAfter === null ? name : TICKET.to(name, finishAfter)}</span>
        <strong>{TICKET_STATE_WORDS[state]}</strong>
      </Link>
    </li>
  );
}
