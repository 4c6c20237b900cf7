import { useState } from "react";
import type { Ball } from "#contract/records/ball";
import { isPriced } from "#contract/records/pricedWork";
import type { Ticket } from "#contract/records/ticket";
import type { Visit } from "#contract/records/visit";
import type { Account as VisitAccount } from "#contract/routes/money";
import { PRICING } from "#words/en/rooms/pricing";
import { SHOP } from "#words/en/rooms/shop";
import { TICKET } from "#words/en/rooms/ticket";
import { WordField } from "../../pieces/PlainFields.tsx";
import { chargeName } from "../../shop/pricing.ts";
import { Reading } from "../../shop/Reading.tsx";
import { answered, shop } from "../../shop/shopClient.ts";
import { useRead } from "../../shop/useShop.ts";
import { useAccount } from "../../shop/useTicket.ts";
import { WriteFault } from "../../shop/WriteFault.tsx";
import { useShopTimes } from "../../shop/zone.ts";
import { Discount } from "./Discount.tsx";
import { PriceWork } from "./PriceWork.tsx";
import { type Method, useTakePayment } from "./useTakePayment.ts";

interface OfTicket {
  readonly ticket: Ticket;
  readonly ball: Ball;
}

/** The bill of the visit, what was paid of it and what is owed; one press when it is paid in full. */
export function Account({ ticket, ball }: OfTicket) {
  const { visitId } = ticket;
  const account = useAccount(visitId);
  const visit = useRead(["visits", visitId], () => answered(shop.visits[":id"].$get({ param: { id: visitId } })));
  return (
    <section className="plate">
      <h2>{TICKET.charges}</h2>
      <Reading of={visit}>
        {(ofVisit) => (
          <Reading of={account}>
            {(read) => (
              <>
                {read.linesCents > 0 || ofVisit.charges.length > 0 ? (
                  <Bill visit={ofVisit} account={read} />
                ) : (
                  <p className="nothing">{TICKET.noCharges}</p>
                )}
                {read.linesCents > 0 && <Discount visit={ofVisit} mostCents={read.linesCents} />}
                <FreeWork visit={ofVisit} ticket={ticket} ball={ball} />
                {ofVisit.state === "closed" && <p className="note">{TICKET.visitClosed}</p>}
                <Pay visitId={visitId} account={read} />
                <NotPriced ticket={ticket} ball={ball} visit={ofVisit} />
              </>
            )}
          </Reading>
        )}
      </Reading>
    </section>
  );
}

/** Line by line, with the tax of each rate, and how that was rounded. */
function Bill({ visit, account }: { readonly visit: Visit; readonly account: VisitAccount }) {
  const times = useShopTimes();
  const { discountCents, taxes, taxIncluded, taxRounding, totalCents, paidCents, owedCents } = account;
  const sums: readonly (readonly [string, number])[] = [
    ...(discountCents === 0 ? [] : [[TICKET.discount(visit.discountWhy), -discountCents] as const]),
    ...(taxIncluded === "yes" ? [] : taxes.map((tax) => [TICKET.tax(SHOP.percent(tax.taxMillipercent)), tax.cents] as const)),
    [TICKET.total, totalCents],
    ...(taxIncluded === "no" ? [] : taxes.map((tax) => [TICKET.taxIn(SHOP.percent(tax.taxMillipercent)), tax.cents] as const)),
    ...(paidCents === 0 ? [] : [[TICKET.paid, paidCents] as const]),
  ];
  return (
    <>
      <dl className="bill">
        {[...visit.charges.entries()].map(([i, { what, quantity, eachCents, prepaid }]) => (
          <div key={i}>
            <dt>{quantity === 1 ? chargeName(what) : `${quantity} × ${chargeName(what)}`}</dt>
            <dd>{prepaid === "yes" ? TICKET.prepaid : times.money(quantity * eachCents)}</dd>
          </div>
        ))}
        {sums.map(([name, cents]) => (
          <div key={name} className={name === TICKET.total ? "bill-total" : undefined}>
            <dt>{name}</dt>
            <dd>{times.money(cents)}</dd>
          </div>
        ))}
        <div className="bill-total">
          <dt>{TICKET.owed}</dt>
          <dd>{times.money(owedCents)}</dd>
        </div>
      </dl>
      {taxes.length > 0 && <p className="note">{TICKET.taxRounded[taxRounding]}</p>}
    </>
  );
}

function FreeWork({ visit, ticket, ball }: OfTicket & { readonly visit: Visit }) {
  const free = visit.free.find(({ ticketId }) => ticketId === ticket.id);
  return free === undefined ? null : <p>{PRICING.isFree(ball.name, free.why)}</p>;
}

/** As soon as somebody knows what it costs it can be said; a line without a ticket is for all of the visit. */
function NotPriced({ ticket, ball, visit }: OfTicket & { readonly visit: Visit }) {
  const [pricing, setPricing] = useState(false);
  if (isPriced(ticket, visit)) return null;
  return (
    <>
      <p className="not-priced">{PRICING.isNotPriced(ball.name)}</p>
      {pricing ? (
        <PriceWork ticket={ticket} ball={ball} act={PRICING.keep} then={async () => setPricing(false)}>
          <button type="button" className="button" onClick={() => setPricing(false)}>
            {PRICING.later}
          </button>
        </PriceWork>
      ) : (
        <button type="button" className="button" onClick={() => setPricing(true)}>
          {PRICING.priceIt}
        </button>
      )}
    </>
  );
}

function Pay({ visitId, account: { owedCents, currency } }: { readonly visitId: string; readonly account: VisitAccount }) {
  const [method, setMethod] = useState<Method>("card");
  const payment = useTakePayment(visitId);
  return (
    <>
      {owedCents > 0 && (
        <div className="field-row">
          <WordField label={TICKET.method} value={method} words={TICKET.methods} onChange={(word) => setMethod(word as Method)} />
          <button type="button" className="button" disabled={payment.isPending} onClick={() => payment.take(owedCents, currency, method)}>
            {TICKET.takePayment}
          </button>
        </div>
      )}
      <WriteFault error={payment.error} />
    </>
  );
}
