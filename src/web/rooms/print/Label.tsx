import { TICKET } from "#words/en/rooms/ticket";
import { useSettings, useShopTimes } from "../../shop/zone.ts";
import { LABEL_MARGIN_MM, labelOf } from "./papers.ts";
import { ScanCode } from "./ScanCode.tsx";
import type { SheetParts } from "./sheetParts.ts";

/** The label on the ball's bag: whose, to what, for when, and a code that opens its ticket; as large as the shop's labels are. */
export function Label({ ticket, ball, bowler }: SheetParts) {
  const times = useShopTimes();
  const settings = useSettings().data;
  if (settings === undefined) return null;
  const { widthMm, heightMm } = labelOf(settings);
  const style = { width: `${widthMm - 2 * LABEL_MARGIN_MM}mm`, height: `${heightMm - 2 * LABEL_MARGIN_MM}mm` };
  return (
    <article className={widthMm > heightMm ? "label label-wide" : "label"} style={style}>
      <div className="label-words">
        <h2>{ball.name}</h2>
        <p>{bowler?.name ?? TICKET.nobody}</p>
        <p className="label-finish">{ticket.finishAfter ?? TICKET.notDecided}</p>
        <p>{ticket.promisedFor === null ? TICKET.noPromise : times.onPaper(ticket.promisedFor)}</p>
        {ball.serial !== null && <p className="serial">{ball.serial}</p>}
      </div>
      <ScanCode ticketId={ticket.id} />
    </article>
  );
}
