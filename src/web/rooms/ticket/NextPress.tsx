import { useState } from "react";
import { Link } from "wouter";
import { statesAfter } from "#contract/records/ticketStates";
import { PRICING } from "#words/en/rooms/pricing";
import { TICKET } from "#words/en/rooms/ticket";
import { WordField } from "../../pieces/PlainFields.tsx";
import { useMay } from "../../shop/useSession.tsx";
import type { TicketParts } from "../../shop/useTicket.ts";
import { useAccount, useMoveTicket } from "../../shop/useTicket.ts";
import { WriteFault } from "../../shop/WriteFault.tsx";
import { useShopTimes } from "../../shop/zone.ts";
import { PriceWork } from "./PriceWork.tsx";
import { type Method, useTakePayment } from "./useTakePayment.ts";

/** The one thing that is to be done with a ticket as it stands. */
export function NextPress(parts: TicketParts) {
  const { ticket, work } = parts;
  const may = useMay();
  const move = useMoveTicket(ticket);
  if (ticket.stops.some(({ clearedAt }) => clearedAt === null)) return null;
  if (statesAfter(ticket.state).includes("collected")) return <HandOver {...parts} />;
  const isToWork = work.next !== null && ["received", "waiting for approval", "in work", "drying", "rework"].includes(ticket.state);
  if (isToWork && may("technician"))
    return (
      <Link href={`/bench/${ticket.id}`} className="button primary">
        {work.signed.length + work.sides.length === 0 ? TICKET.startWork : TICKET.keepWorking}
      </Link>
    );
  if (ticket.stages.length === 0 || work.next !== null || !statesAfter(ticket.state).includes("ready")) return null;
  return (
    <>
      <button type="button" className="button primary" disabled={move.isPending} onClick={() => move.mutate({ to: "ready" })}>
        {TICKET.markReady}
      </button>
      <WriteFault error={move.error} />
    </>
  );
}

/** What the work costs is asked where nobody has said it, what is due is taken, and the ball goes out. */
function HandOver({ ticket, ball }: TicketParts) {
  const times = useShopTimes();
  const move = useMoveTicket(ticket);
  const account = useAccount(ticket.visitId);
  const payment = useTakePayment(ticket.visitId);
  const [asking, setAsking] = useState(false);
  const [method, setMethod] = useState<Method>("card");
  // Where the shop is away nobody can say what it costs: the ball goes out, and is missed in the open balances.
  const isPriced = (read = account.data) => read?.notPriced.every(({ ticketId }) => ticketId !== ticket.id) ?? true;
  const owed = account.data?.owedCents ?? 0;
  const handOver = async () => {
    // Pressed before the bill was there it is waited for, or the question would be passed by.
    const read = account.data ?? (await account.refetch()).data;
    if (isPriced(read) && (read?.owedCents ?? 0) <= 0) move.mutate({ to: "collected" });
    else setAsking(true);
  };
  // What was priced is paid next; what is free, or paid already, goes out.
  const goOn = async () => {
    const read = (await account.refetch()).data;
    if ((read?.owedCents ?? 0) <= 0) await move.mutateAsync({ to: "collected" });
  };
  const pay = () => payment.take(owed, account.data?.currency ?? "USD", method, () => move.mutate({ to: "collected" }));
  return (
    <>
      <button type="button" className="button primary" disabled={move.isPending} onClick={handOver}>
        {owed > 0 ? TICKET.payAndHandOver : TICKET.handOver}
      </button>
      {asking && !isPriced() && (
        <fieldset className="asked">
          <legend>{PRICING.ask}</legend>
          <p>{PRICING.askWhy(ball.name)}</p>
          <PriceWork ticket={ticket} ball={ball} act={PRICING.handOver} then={goOn}>
            <button type="button" className="button" disabled={move.isPending} onClick={() => move.mutate({ to: "collected" })}>
              {PRICING.handOverLater}
            </button>
            <button type="button" className="button" onClick={() => setAsking(false)}>
              {PRICING.leave}
            </button>
          </PriceWork>
        </fieldset>
      )}
      {asking && isPriced() && owed > 0 && (
        <fieldset className="asked">
          <legend>{TICKET.payAndHandOver}</legend>
          <WordField label={TICKET.method} value={method} words={TICKET.methods} onChange={(word) => setMethod(word as Method)} />
          <div className="buttons">
            <button type="button" className="button primary" disabled={payment.isPending || move.isPending} onClick={pay}>
              {TICKET.paidHandOver(times.money(owed))}
            </button>
            <button type="button" className="button" disabled={move.isPending} onClick={() => move.mutate({ to: "collected" })}>
              {TICKET.unpaidHandOver}
            </button>
            <button type="button" className="button" onClick={() => setAsking(false)}>
              {TICKET.notYet}
            </button>
          </div>
        </fieldset>
      )}
      <WriteFault error={payment.error ?? move.error} />
    </>
  );
}
