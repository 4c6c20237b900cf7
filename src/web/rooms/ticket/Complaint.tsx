import { Link } from "wouter";
import { coverWord } from "#words/coverWord";
import { INTAKE, SYMPTOMS } from "#words/en/rooms/intake";
import { TICKET } from "#words/en/rooms/ticket";
import { WRONG } from "#words/en/rooms/wrong";
import { useSaidAtCounter } from "../../shop/useSaidAtCounter.ts";
import { For } from "../../shop/useSession.tsx";
import type { TicketParts } from "../../shop/useTicket.ts";
import { useShopTimes } from "../../shop/zone.ts";
import { PromiseChange } from "./PromiseChange.tsx";

/** What is wrong with the ball, what was seen on it, in the bowler's words. */
export function Complaint({ ticket, ball }: TicketParts) {
  const times = useShopTimes();
  const told = useSaidAtCounter(ticket, ball);
  const symptoms = ticket.symptoms.map((id) => (id in SYMPTOMS ? SYMPTOMS[id as keyof typeof SYMPTOMS] : id));
  const known = [
    coverWord(ball.cover),
    ticket.whatChanged === null ? null : INTAKE.changed[ticket.whatChanged],
    `${TICKET.received} ${times.at(ticket.receivedAt)}`,
  ];
  return (
    <section className="plate told-of">
      {symptoms.length > 0 && <h2>{symptoms.join(" ")}</h2>}
      <p>{known.filter((part) => part !== null).join(" · ")}</p>
      {ticket.complaint !== "" && <blockquote>“{ticket.complaint}”</blockquote>}
      {ticket.findings !== "" && (
        <p>
          {TICKET.findings}: {ticket.findings}
        </p>
      )}
      {ticket.besidesWhy !== "" && <p>{TICKET.besides(ticket.besidesWhy)}</p>}
      {told.map(([name, text]) => (
        <p key={name}>
          {name}: {text}
        </p>
      ))}
      <For least="counter">
        <PromiseChange ticket={ticket} />
      </For>
      <p className="ticket-links">
        <Link href={`/balls/${ball.id}`} className="link">
          {TICKET.ballLog}
        </Link>
        <Link href={`/wrong?ball=${ball.id}&ticket=${ticket.id}`} className="link">
          {WRONG.open}
        </Link>
      </p>
    </section>
  );
}
