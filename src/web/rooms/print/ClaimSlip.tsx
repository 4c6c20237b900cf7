import { isPriced } from "#contract/records/pricedWork";
import type { Visit } from "#contract/records/visit";
import { INTAKE } from "#words/en/rooms/intake";
import { PRINT } from "#words/en/rooms/print";
import { TICKET } from "#words/en/rooms/ticket";
import { useAccount } from "../../shop/useTicket.ts";
import { useSettings, useShopTimes } from "../../shop/zone.ts";
import { ScanCode } from "./ScanCode.tsx";
import type { SheetParts } from "./sheetParts.ts";

interface SlipProps {
  readonly visit: Visit;
  readonly parts: readonly SheetParts[];
}

/** What the customer takes home: which balls were left, for when, what is due; and a code that finds them again. */
export function ClaimSlip({ visit, parts }: SlipProps) {
  const settings = useSettings().data;
  const times = useShopTimes();
  const account = useAccount(visit.id).data;
  const [first] = parts;
  return (
    <article className="claim-slip">
      <p className="sheet-shop">
        {settings?.shopName} {settings?.data === "invented" && `(${TICKET.invented})`}
      </p>
      <h2>{PRINT.slip}</h2>
      <p>{first?.bowler?.name ?? INTAKE.unclaimed}</p>
      <ul>
        {parts.map(({ ticket, ball }) => (
          <li key={ticket.id}>
            <strong>{ball.name}</strong> {ball.serial ?? ""}{" "}
            {ticket.stops.some(({ clearedAt }) => clearedAt === null) ? PRINT.slipStopped : `→ ${ticket.finishAfter ?? TICKET.notDecided}`}
          </li>
        ))}
      </ul>
      <p>{PRINT.leftOn(times.day(visit.arrivedAt))}</p>
      <p>
        <strong>
          {INTAKE.promise} {visit.promisedFor === null ? TICKET.noPromise : times.onPaper(visit.promisedFor)}
        </strong>
      </p>
      {account !== undefined && (
        <p>
          {INTAKE.duePickup}: {times.money(account.owedCents)}
          {parts.some(({ ticket }) => !isPriced(ticket, visit)) && ` ${INTAKE.duePlus}`}
        </p>
      )}
      {first !== undefined && <ScanCode ticketId={first.ticket.id} />}
      <p className="note">{PRINT.bringSlip}</p>
    </article>
  );
}
