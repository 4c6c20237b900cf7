import { type ReactNode, useEffect } from "react";
import { Link } from "wouter";
import type { Settings } from "#contract/records/settings";
import { PRINT } from "#words/en/rooms/print";
import { Reading } from "../../shop/Reading.tsx";
import { useTicket } from "../../shop/useTicket.ts";
import { useSettings } from "../../shop/zone.ts";
import { CareCard } from "./CareCard.tsx";
import { Label } from "./Label.tsx";
import { MeasureSheet } from "./MeasureSheet.tsx";
import { cardPage, labelPage, onPaper, type PageOf, pageText, sheetPage, ticketPage } from "./papers.ts";
import type { SheetParts } from "./sheetParts.ts";
import { TicketSheet } from "./TicketSheet.tsx";
import { VisitPapers } from "./VisitPapers.tsx";

interface Sheet {
  readonly Sheet: (parts: SheetParts) => ReactNode;
  /** The paper that it is printed on. */
  page(settings: Settings): PageOf;
  readonly name: string;
}

/** The papers of a ticket: each a page of its own size. */
const SHEETS: Readonly<Record<string, Sheet>> = {
  ticket: { Sheet: TicketSheet, page: ticketPage, name: PRINT.ticket },
  label: { Sheet: Label, page: labelPage, name: PRINT.label },
  care: { Sheet: CareCard, page: cardPage, name: PRINT.care },
  measures: { Sheet: MeasureSheet, page: sheetPage, name: PRINT.measures },
};

/** A paper as it will lie on the counter, and the way to the printer. With `now` in the address it is sent there at once. */
export function PrintRoom({ params }: { readonly params: Readonly<Record<string, string>> }) {
  return params.what === "visit" ? <VisitPapers id={params.id} /> : <TicketPaper params={params} />;
}

function TicketPaper({ params }: { readonly params: Readonly<Record<string, string>> }) {
  const { ticket, ball, bowler } = useTicket(params.id);
  const sheet = SHEETS[params.what] ?? SHEETS.ticket;
  const settings = useSettings().data;
  const isThere =
    settings !== undefined &&
    ticket.data !== undefined &&
    ball.data !== undefined &&
    (ticket.data.bowlerId === null || bowler.data !== undefined);
  useEffect(() => {
    document.title = sheet.name;
    if (!isThere || !new URLSearchParams(location.search).has("now")) return;
    // The picture of the code and the fonts are drawn a moment after the words.
    const timer = setTimeout(() => print(), SETTLED_MS);
    return () => clearTimeout(timer);
  }, [sheet, isThere]);
  return (
    <main id="answer" className="room print-room" tabIndex={-1}>
      {settings !== undefined && <style>{`@page { ${pageText(sheet.page(settings))} }`}</style>}
      <div className="room-head no-print">
        <Link href={`/tickets/${params.id}`} className="button">
          {PRINT.back}
        </Link>
        <h1>{sheet.name}</h1>
        <button type="button" className="button primary" onClick={() => print()}>
          {PRINT.print}
        </button>
      </div>
      <Reading of={ticket}>
        {(read) => (
          <Reading of={ball}>
            {(ofBall) => (
              <div className={`sheet sheet-${params.what} ${settings === undefined ? "" : onPaper(params.what, settings)}`}>
                <sheet.Sheet ticket={read} ball={ofBall} bowler={bowler.data ?? null} />
              </div>
            )}
          </Reading>
        )}
      </Reading>
    </main>
  );
}

const SETTLED_MS = 400;
