import { useState } from "react";
import { Link } from "wouter";
import type { VisitAccount } from "#contract/routes/money";
import { MONEY } from "#words/en/rooms/money";
import { TICKET_STATE_WORDS } from "#words/en/rooms/today";
import { ownerLink } from "../../pieces/ownerLink.tsx";
import { type Column, PlainTable } from "../../pieces/PlainTable.tsx";
import { everyPage } from "../../shop/everyPage.ts";
import { Reading } from "../../shop/Reading.tsx";
import { answered, shop } from "../../shop/shopClient.ts";
import { useRead } from "../../shop/useShop.ts";
import { useShopTimes } from "../../shop/zone.ts";
import { AmountForm } from "./AmountForm.tsx";

/** Open visits of which something is owed, one way or the other, or whose work is done and nobody said what it costs. */
export function Balances() {
  const accounts = useRead(["visits", "accounts", "open"], () =>
    everyPage((after) => answered(shop.accounts.$get({ query: { state: "open", limit: "200", ...after } }))),
  );
  const owing = (all: readonly VisitAccount[]) => all.filter(({ account }) => account.owedCents !== 0);
  const isSettled = (all: readonly VisitAccount[]) => owing(all).length === 0 && all.every(({ account }) => account.notPriced.length === 0);
  return (
    <section className="plate">
      <h2>{MONEY.balances}</h2>
      <Reading of={accounts} isEmpty={isSettled} empty={MONEY.noBalances}>
        {(all) => (
          <>
            <NotPriced accounts={all} />
            {owing(all).length > 0 && <Owing accounts={owing(all)} />}
          </>
        )}
      </Reading>
    </section>
  );
}

function Owing({ accounts }: { readonly accounts: readonly VisitAccount[] }) {
  const times = useShopTimes();
  const [taking, setTaking] = useState<string | null>(null);
  const taken = accounts.find(({ visit }) => visit.id === taking);
  const { balanceColumns } = MONEY;
  const columns: readonly Column<VisitAccount>[] = [
    { name: balanceColumns.name, cell: ({ visit, bowlerName }) => ownerLink(ownerOf(visit.bowlerId, bowlerName), MONEY.nobody) },
    { name: balanceColumns.on, kind: "day", cell: ({ visit }) => times.day(visit.arrivedAt) },
    { name: balanceColumns.total, kind: "figure", cell: ({ account }) => times.money(account.totalCents) },
    {
      name: balanceColumns.owed,
      kind: "figure",
      cell: ({ account }) => <Owed cents={account.owedCents} />,
    },
    {
      name: MONEY.take,
      kind: "press",
      cell: ({ visit, account, bowlerName }) =>
        account.owedCents <= 0 ? (
          ""
        ) : (
          <button
            type="button"
            className="button"
            aria-label={MONEY.takeFrom(bowlerName ?? MONEY.nobody)}
            onClick={() => setTaking(visit.id)}
          >
            {MONEY.take}
          </button>
        ),
    },
  ];
  return (
    <>
      {taken !== undefined && (
        <AmountForm
          key={taken.visit.id}
          label={MONEY.takeFrom(taken.bowlerName ?? MONEY.nobody)}
          act={MONEY.take}
          payment={{ visitId: taken.visit.id, kind: "payment", currency: taken.account.currency }}
          method="card"
          mostCents={taken.account.owedCents}
          mostTipCents={Number.POSITIVE_INFINITY}
          onDone={() => setTaking(null)}
        />
      )}
      <PlainTable name={MONEY.balances} columns={columns} rows={accounts} keyOf={({ visit }) => visit.id} />
    </>
  );
}

function Owed({ cents }: { readonly cents: number }) {
  const { money } = useShopTimes();
  if (cents === 0) return "";
  return cents > 0 ? <strong>{money(cents)}</strong> : MONEY.owedToThem(money(-cents));
}

type Missed = Pick<VisitAccount, "visit" | "bowlerName"> & VisitAccount["account"]["notPriced"][number];

/** Ball by ball; each opens its ticket, where it is priced. */
function NotPriced({ accounts }: { readonly accounts: readonly VisitAccount[] }) {
  const times = useShopTimes();
  const missed = accounts.flatMap(({ visit, bowlerName, account }) => account.notPriced.map((one) => ({ visit, bowlerName, ...one })));
  if (missed.length === 0) return null;
  const { balanceColumns } = MONEY;
  const columns: readonly Column<Missed>[] = [
    { name: balanceColumns.name, cell: ({ visit, bowlerName }) => ownerLink(ownerOf(visit.bowlerId, bowlerName), MONEY.nobody) },
    { name: balanceColumns.on, kind: "day", cell: ({ visit }) => times.day(visit.arrivedAt) },
    { name: balanceColumns.ball, cell: ({ ticketId, ballName }) => <Link href={`/tickets/${ticketId}`}>{ballName}</Link> },
    { name: balanceColumns.state, cell: ({ state }) => TICKET_STATE_WORDS[state] },
  ];
  return (
    <>
      <h3>{MONEY.noPrice}</h3>
      <PlainTable name={MONEY.noPrice} columns={columns} rows={missed} keyOf={({ ticketId }) => ticketId} />
    </>
  );
}

function ownerOf(id: string | null, name: string | null) {
  return id === null ? null : { id, name: name ?? MONEY.nobody };
}
