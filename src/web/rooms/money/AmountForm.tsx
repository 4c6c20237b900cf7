import { useState } from "react";
import type { PaymentWritten } from "#contract/records/money";
import { MONEY } from "#words/en/rooms/money";
import { LineField, WordField } from "../../pieces/PlainFields.tsx";
import { answered, shop } from "../../shop/shopClient.ts";
import { centsOf } from "../../shop/typedValues.ts";
import { useOnce } from "../../shop/useOnce.ts";
import { useWrite } from "../../shop/useShop.ts";
import { WriteFault } from "../../shop/WriteFault.tsx";
import { useShopTimes } from "../../shop/zone.ts";

interface AmountProps {
  readonly label: string;
  /** What is done, on the button. */
  readonly act: string;
  readonly payment: Pick<PaymentWritten, "visitId" | "kind" | "refundOf" | "currency">;
  readonly method: PaymentWritten["method"];
  readonly mostCents: number;
  /** On top of it, or of what is given back; 0 where there is none. */
  readonly mostTipCents: number;
  onDone(): void;
}

/** An amount that changes hands, once however often it is pressed. */
export function AmountForm({ label, act, payment, method: usual, mostCents, mostTipCents, onDone }: AmountProps) {
  const times = useShopTimes();
  const [typed, setTyped] = useState((mostCents / 100).toFixed(2));
  const [method, setMethod] = useState(usual);
  const [tip, setTip] = useState("");
  const [note, setNote] = useState("");
  const [once] = useOnce();
  const write = useWrite((json: PaymentWritten) => answered(shop.payments.$post({ json, header: once.headers })), ["payments", "visits"]);
  const cents = centsOf(typed);
  const fits = cents !== null && cents <= mostCents;
  const tipCents = /^[\s0.,]*$/.test(tip) ? 0 : centsOf(tip);
  const tipFits = tipCents !== null && tipCents <= mostTipCents;
  return (
    <form
      className="amount-form"
      aria-label={label}
      onSubmit={(event) => {
        event.preventDefault();
        if (fits && tipFits) write.mutate({ ...payment, at: once.at, cents, tipCents, method, note }, { onSuccess: onDone });
      }}
    >
      <div className="field-row">
        <LineField
          label={MONEY.amount(payment.currency)}
          inputMode="decimal"
          value={typed}
          problem={fits ? undefined : MONEY.amountAllowed(times.money(mostCents))}
          onChange={setTyped}
        />
        {mostTipCents > 0 && (
          <LineField
            label={MONEY.tip}
            inputMode="decimal"
            value={tip}
            problem={tipFits ? undefined : MONEY.tipAllowed(mostTipCents === Number.POSITIVE_INFINITY ? null : times.money(mostTipCents))}
            onChange={setTip}
          />
        )}
        <WordField label={MONEY.method} value={method} words={MONEY.methods} onChange={(word) => setMethod(word as typeof method)} />
        <LineField label={MONEY.why} value={note} onChange={setNote} />
      </div>
      <div className="buttons">
        <button type="submit" className="button primary" disabled={!fits || !tipFits || write.isPending}>
          {act}
        </button>
        <button type="button" className="button" disabled={write.isPending} onClick={onDone}>
          {MONEY.leave}
        </button>
      </div>
      <WriteFault error={write.error} />
    </form>
  );
}
