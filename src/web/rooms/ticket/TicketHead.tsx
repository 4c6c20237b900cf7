import { Link } from "wouter";
import type { Ticket } from "#contract/records/ticket";
import { PRINT } from "#words/en/rooms/print";
import { TICKET } from "#words/en/rooms/ticket";
import { FinishSwatch } from "../../pieces/FinishSwatch.tsx";
import { ownerLink } from "../../pieces/ownerLink.tsx";
import { For } from "../../shop/useSession.tsx";
import type { TicketParts } from "../../shop/useTicket.ts";
import { useShopTimes } from "../../shop/zone.ts";
import { NextPress } from "./NextPress.tsx";
import { StateTrack } from "./StateTrack.tsx";

const LARGE = 64;

/** What becomes of the ball, for whom and by when; the one thing to do now; how far it is. */
export function TicketHead(parts: TicketParts) {
  const { ticket, ball, bowler } = parts;
  const times = useShopTimes();
  const { finishBefore, finishAfter, promisedFor } = ticket;
  return (
    <>
      <div className="ticket-head">
        <div className="ticket-finishes" aria-hidden="true">
          {finishBefore !== null && <FinishSwatch finish={finishBefore} size={LARGE} />}
          {finishBefore !== null && finishAfter !== null && <span className="ticket-arrow">→</span>}
          {finishAfter !== null && (
            <span className="ticket-wanted">
              <FinishSwatch finish={finishAfter} size={LARGE} />
            </span>
          )}
        </div>
        <div className="ticket-title">
          <h1>{finishAfter === null ? ball.name : TICKET.to(ball.name, finishAfter)}</h1>
          <p>
            {ownerLink(bowler, TICKET.nobody)} {ball.serial !== null && `· ${ball.serial} `}·{" "}
            {promisedFor === null ? (
              TICKET.noPromise
            ) : (
              <>
                {TICKET.readyBy} <strong>{times.at(promisedFor)}</strong>
              </>
            )}
          </p>
        </div>
        <div className="ticket-acts no-print">
          <For least="counter">
            <NextPress {...parts} />
          </For>
          <Papers ticket={ticket} />
        </div>
      </div>
      <StateTrack ticket={ticket} />
    </>
  );
}

function Papers({ ticket: { id } }: { readonly ticket: Ticket }) {
  const papers = [
    ["ticket", TICKET.printTicket],
    ["label", TICKET.printLabel],
    ["care", TICKET.printCare],
    ["measures", PRINT.measures],
  ] as const;
  return (
    <details className="print-menu">
      <summary className="button">{TICKET.print}</summary>
      <nav aria-label={TICKET.print}>
        {papers.map(([what, name]) => (
          <Link key={what} href={`/print/${what}/${id}`} className="button">
            {name}
          </Link>
        ))}
      </nav>
    </details>
  );
}
