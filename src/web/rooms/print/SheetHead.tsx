import type { ReactNode } from "react";
import { coverWord } from "#words/coverWord";
import { TICKET } from "#words/en/rooms/ticket";
import { useSettings } from "../../shop/zone.ts";
import { ScanCode } from "./ScanCode.tsx";
import type { SheetParts } from "./sheetParts.ts";

/** The head of a sheet: the shop, the ball and whose it is, what the sheet adds, and the code that opens the ticket. */
export function SheetHead({ ticket, ball, bowler, children }: SheetParts & { readonly children: ReactNode }) {
  const settings = useSettings().data;
  return (
    <header className="sheet-head">
      <div>
        <p className="sheet-shop">
          {settings?.shopName} {settings?.data === "invented" && `(${TICKET.invented})`}
        </p>
        <h2>{ball.name}</h2>
        <p>
          {bowler?.name ?? TICKET.nobody} · {coverWord(ball.cover)} {ball.serial !== null && `· ${ball.serial}`}
        </p>
        {children}
      </div>
      <ScanCode ticketId={ticket.id} />
    </header>
  );
}
