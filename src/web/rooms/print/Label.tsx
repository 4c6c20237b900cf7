import { TICKET } from "#words/en/rooms/ticket";
import { useShopTimes } from "../../shop/zone.ts";
import { ScanCode } from "./ScanCode.tsx";
import type { SheetParts } from "./sheetParts.ts";

/** The label on the ball's bag: whose, to what, for when, and a code that opens its ticket. */
export function Label({ ticket, ball, bowler }: SheetParts) {
  const times = useShopTimes();
  return (
    <article className="label">
      <h2>{ball.name}</h2>
      <p>{bowler?.name ?? TICKET.nobody}</p>
      <p className="label-finish">{ticket.finishAfter ?? TICKET.notDecided}</p>
      <p>{ticket.promisedFor === null ? TICKET.noPromise : times.at(ticket.promisedFor)}</p>
      <ScanCode ticketId={ticket.id} />
      {ball.serial !== null && <p className="serial">{ball.serial}</p>}
    </article>
  );
}
