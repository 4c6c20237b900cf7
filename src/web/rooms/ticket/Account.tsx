import { useState } from "react";
import { TICKET } from "#words/en/rooms/ticket";
import { WordField } from "../../pieces/PlainFields.tsx";
import { Reading } from "../../shop/Reading.tsx";
import { answered, newKey, shop } from "../../shop/shopClient.ts";
import { useRead, useWrite } from "../../shop/useShop.ts";
import { WriteFault } from "../../shop/WriteFault.tsx";
import { useShopTimes } from "../../shop/zone.ts";

type Method = keyof typeof TICKET.methods;

/** What the visit costs, what was paid of it and what is owed; one press when it is paid in full. */
export function Account({ visitId }: { readonly visitId: string }) {
  const times = useShopTimes();
  const account = useRead(["visits", visitId, "account"], () => answered(shop.visits[":id"].account.$get({ param: { id: visitId } })));
  const [method, setMethod] = useState<Method>("card");
  // One key and one moment for one payment: pressed twice, or sent again after a fault, it is taken once.
  const [once, setOnce] = useState<{ readonly key: string; readonly at: string } | null>(null);
  const pay = useWrite(
    ({ cents, currency, key, at }: { cents: number; currency: string; key: string; at: string }) =>
      answered(
        shop.payments.$post({
          json: { visitId, at, kind: "payment", cents, currency, method },
          header: { "Idempotency-Key": key },
        }),
      ),
    ["visits", "payments"],
  );
  const take = (cents: number, currency: string) => {
    const now = once ?? { key: newKey(), at: new Date().toISOString() };
    setOnce(now);
    pay.mutate(
      { cents, currency, ...now },
      { onSuccess: () => setOnce(null), onError: ({ problem }) => problem !== null && setOnce(null) },
    );
  };
  return (
    <section className="plate">
      <h2>{TICKET.charges}</h2>
      <Reading of={account} isEmpty={({ totalCents, paidCents }) => totalCents === 0 && paidCents === 0} empty={TICKET.noCharges}>
        {({ totalCents, paidCents, owedCents, currency }) => (
          <>
            <p>
              {TICKET.total} {times.money(totalCents)} · {TICKET.paid} {times.money(paidCents)} · <strong>{TICKET.owed}</strong>{" "}
              {times.money(owedCents)}
            </p>
            {owedCents > 0 && (
              <div className="field-row">
                <WordField label={TICKET.method} value={method} words={TICKET.methods} onChange={(word) => setMethod(word as Method)} />
                <button type="button" className="button" disabled={pay.isPending} onClick={() => take(owedCents, currency)}>
                  {TICKET.takePayment}
                </button>
              </div>
            )}
            <WriteFault error={pay.error} />
          </>
        )}
      </Reading>
    </section>
  );
}
