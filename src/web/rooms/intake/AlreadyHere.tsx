import { Link } from "wouter";
import type { Ticket } from "#contract/records/ticket";
import { INTAKE } from "#words/en/rooms/intake";
import { TICKET_STATE_WORDS } from "#words/en/rooms/today";
import { LineField } from "../../pieces/PlainFields.tsx";
import { useShopTimes } from "../../shop/zone.ts";
import type { BallDraft } from "./visitDraft.ts";

interface HereProps {
  readonly ball: BallDraft;
  readonly ticket: Ticket;
  readonly tried: boolean;
  onWhy(besidesWhy: string): void;
}

/** The ball is in the shop by another ticket: that one is opened, or somebody says why there is a second one. */
export function AlreadyHere({ ball, ticket, tried, onWhy }: HereProps) {
  const times = useShopTimes();
  const why = ball.besidesWhy ?? "";
  // What is ready waits for its owner, whatever was promised.
  const isDone = ticket.state === "ready" || ticket.state === "uncollected";
  const promised = isDone || ticket.promisedFor === null ? null : times.at(ticket.promisedFor);
  return (
    <section className="already-here" role="alert">
      <h2>{INTAKE.alreadyHere(ball.name, TICKET_STATE_WORDS[ticket.state], promised)}</h2>
      <Link href={`/tickets/${ticket.id}`} className="button">
        {INTAKE.openItsTicket}
      </Link>
      <LineField
        label={INTAKE.secondWhy}
        value={why}
        problem={tried && why.trim() === "" ? INTAKE.needsSecondWhy : undefined}
        onChange={onWhy}
      />
    </section>
  );
}
