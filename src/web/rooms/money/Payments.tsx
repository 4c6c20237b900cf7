import { useState } from "react";
import type { Takings } from "#contract/routes/money";
import { MONEY } from "#words/en/rooms/money";
import { type Column, PlainTable } from "../../pieces/PlainTable.tsx";
import { useShopTimes } from "../../shop/zone.ts";
import { AmountForm } from "./AmountForm.tsx";
import { leftOf, tipLeftOf } from "./span.ts";

type Taken = Takings["payments"][number];

/** What changed hands, one line each. A payment is never altered: what was wrong is given back. */
export function Payments({ takings }: { readonly takings: Takings }) {
  const times = useShopTimes();
  const [returning, setReturning] = useState<string | null>(null);
  const { payments } = takings;
  const returned = payments.find(({ payment }) => payment.id === returning);
  if (payments.length === 0) return null;
  const { columns } = MONEY;
  const shown: readonly Column<Taken>[] = [
    { name: columns.at, kind: "day", cell: ({ payment }) => times.at(payment.at) },
    { name: columns.from, cell: ({ bowlerName }) => bowlerName ?? MONEY.nobody },
    {
      name: columns.amount,
      kind: "figure",
      cell: ({ payment }) => (payment.kind === "payment" ? times.money(payment.cents) : times.money(-payment.cents)),
    },
    { name: columns.how, cell: ({ payment }) => howOf(payment, times.money) },
    { name: MONEY.giveBack, kind: "press", cell: (taken) => <GiveBack taken={taken} payments={payments} onPress={setReturning} /> },
  ];
  return (
    <section className="plate">
      <h2>{MONEY.payments}</h2>
      {returned !== undefined && (
        <AmountForm
          key={returned.payment.id}
          label={MONEY.giveBackOf(times.money(returned.payment.cents), returned.bowlerName ?? MONEY.nobody)}
          act={MONEY.giveBack}
          payment={{
            visitId: returned.payment.visitId,
            kind: "refund",
            refundOf: returned.payment.id,
            currency: returned.payment.currency,
          }}
          method={returned.payment.method}
          mostCents={leftOf(returned.payment, payments)}
          mostTipCents={tipLeftOf(returned.payment, payments)}
          onDone={() => setReturning(null)}
        />
      )}
      <PlainTable name={MONEY.payments} columns={shown} rows={payments} keyOf={({ payment }) => payment.id} />
    </section>
  );
}

function howOf({ method, note, kind, tipCents }: Taken["payment"], money: (cents: number) => string): string {
  const tip = tipCents === 0 ? "" : MONEY.withTip(money(tipCents));
  return [kind === "refund" ? MONEY.kinds.refund : "", MONEY.methods[method], tip, note].filter((part) => part !== "").join(", ");
}

interface GiveBackProps {
  readonly taken: Taken;
  readonly payments: Takings["payments"];
  onPress(id: string): void;
}

function GiveBack({ taken: { payment, bowlerName }, payments, onPress }: GiveBackProps) {
  const times = useShopTimes();
  if (payment.kind === "refund") return "";
  if (leftOf(payment, payments) <= 0) return MONEY.wasGiven;
  return (
    <button
      type="button"
      className="button"
      aria-label={MONEY.giveBackOf(times.money(payment.cents), bowlerName ?? MONEY.nobody)}
      onClick={() => onPress(payment.id)}
    >
      {MONEY.giveBack}
    </button>
  );
}
