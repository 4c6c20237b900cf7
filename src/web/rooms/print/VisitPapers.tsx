import { useQueries } from "@tanstack/react-query";
import { useEffect } from "react";
import { Link } from "wouter";
import type { Settings } from "#contract/records/settings";
import { PRINT } from "#words/en/rooms/print";
import { Reading } from "../../shop/Reading.tsx";
import { answered, shop } from "../../shop/shopClient.ts";
import { useRead } from "../../shop/useShop.ts";
import { useSettings } from "../../shop/zone.ts";
import { ClaimSlip } from "./ClaimSlip.tsx";
import { Label } from "./Label.tsx";
import { cardPage, labelPage, onPaper, pageText, ticketPage } from "./papers.ts";
import type { SheetParts } from "./sheetParts.ts";
import { TicketSheet } from "./TicketSheet.tsx";

/** Every paper of a visit in one go: a ticket and a label for each ball, and the slip to claim them with. With `now` in the address it goes to the printer at once. */
export function VisitPapers({ id }: { readonly id: string }) {
  const visit = useRead(["visits", id], () => answered(shop.visits[":id"].$get({ param: { id } })));
  const parts = useParts(id);
  const settings = useSettings().data;
  const isThere = visit.data !== undefined && parts !== null && settings !== undefined;
  useEffect(() => {
    document.title = PRINT.visit;
    if (!isThere || !new URLSearchParams(location.search).has("now")) return;
    // The pictures of the codes and the fonts are drawn a moment after the words.
    const timer = setTimeout(() => print(), SETTLED_MS);
    return () => clearTimeout(timer);
  }, [isThere]);
  return (
    <main id="answer" className="room print-room visit-papers" tabIndex={-1}>
      {settings !== undefined && <style>{pagesOf(settings)}</style>}
      <div className="room-head no-print">
        <Link href={parts === null || parts.length === 0 ? "/" : `/tickets/${parts[0].ticket.id}`} className="button">
          {PRINT.back}
        </Link>
        <h1>{PRINT.visit}</h1>
        <button type="button" className="button primary" disabled={!isThere} onClick={() => print()}>
          {PRINT.print}
        </button>
      </div>
      <Reading of={visit}>
        {(read) =>
          parts === null ? null : (
            <>
              {parts.map((part) => (
                <div key={part.ticket.id} className={`sheet sheet-ticket ${settings === undefined ? "" : onPaper("ticket", settings)}`}>
                  <TicketSheet {...part} />
                </div>
              ))}
              {parts.map((part) => (
                <div key={part.ticket.id} className="sheet sheet-label">
                  <Label {...part} />
                </div>
              ))}
              <div className="sheet sheet-slip">
                <ClaimSlip visit={read} parts={parts} />
              </div>
            </>
          )
        }
      </Reading>
    </main>
  );
}

const SETTLED_MS = 400;

/** Each kind of paper as the shop has chosen it; the slip lies on the same as a card. */
function pagesOf(settings: Settings): string {
  const kinds = { ticket: ticketPage(settings), label: labelPage(settings), slip: cardPage(settings) };
  return Object.entries(kinds)
    .map(([name, page]) => `@page ${name} { ${pageText(page)} }`)
    .join(" ");
}

/** The tickets of a visit with their balls and whose they are, in the order in which they came; null until all were read. */
function useParts(visitId: string): readonly SheetParts[] | null {
  const tickets = useRead(["tickets", "of-visit", visitId], () =>
    answered(shop.tickets.$get({ query: { visitId, order: "oldest first", limit: "200" } })),
  ).data?.items;
  const balls = useQueries({
    queries: (tickets ?? []).map(({ ballId }) => ({
      queryKey: ["balls", ballId],
      queryFn: () => answered(shop.balls[":id"].$get({ param: { id: ballId } })),
    })),
  });
  const bowlerId = tickets?.[0]?.bowlerId ?? null;
  const bowler = useRead(["bowlers", bowlerId ?? ""], () => answered(shop.bowlers[":id"].$get({ param: { id: bowlerId ?? "" } })), {
    enabled: bowlerId !== null,
  }).data;
  if (tickets === undefined || (bowlerId !== null && bowler === undefined)) return null;
  const parts = tickets.flatMap((ticket, i): SheetParts[] => {
    const ball = balls[i].data;
    return ball === undefined ? [] : [{ ticket, ball, bowler: bowler ?? null }];
  });
  return parts.length === tickets.length ? parts : null;
}
