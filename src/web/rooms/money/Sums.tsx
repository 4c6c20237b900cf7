import { csvText } from "#contract/csv";
import { paidOf } from "#contract/records/money";
import type { Takings } from "#contract/routes/money";
import { MONEY } from "#words/en/rooms/money";
import { TABLE } from "#words/en/rooms/pieces";
import { saveText } from "../../client/saveFile.ts";
import { Facts } from "../../pieces/Facts.tsx";
import { type Column, PlainTable } from "../../pieces/PlainTable.tsx";
import { usePeople } from "../../shop/usePeople.ts";
import { useShopTimes } from "../../shop/zone.ts";
import { byDay, type DayTakings, type Span } from "./span.ts";

type Share = Takings["byWork"][number];
type Method = keyof typeof MONEY.methods;

/** What was taken altogether, by how it was paid, by day, by work and by who did it. */
export function Sums({ takings, span }: { readonly takings: Takings; readonly span: Span }) {
  const times = useShopTimes();
  const people = usePeople().data;
  const { payments } = takings;
  if (payments.length === 0) return <p className="nothing plate">{MONEY.nothing}</p>;
  const personName = (id: string | null) =>
    id === null ? MONEY.nobodySigned : (people?.find((person) => person.id === id)?.name ?? MONEY.hasGone);
  return (
    <>
      <section className="plate">
        <div className="ball-work-head">
          <h2>{MONEY.net}</h2>
          <button type="button" className="button" onClick={() => saveTakings(takings, span)}>
            {TABLE.csv}
          </button>
        </div>
        <p className="large-figure">{times.money(paidOf(payments.map(({ payment }) => payment)))}</p>
        <p className="note">{MONEY.inSpan(payments.length)}</p>
        {takings.tipCents !== 0 && <p className="note">{MONEY.tips(times.money(takings.tipCents))}</p>}
        <Facts rows={byMethod(takings).map(([method, cents]) => [MONEY.methods[method], times.money(cents)])} />
      </section>
      <Days days={byDay(payments)} />
      <Shares title={MONEY.byWork} why={MONEY.byWorkWhy} name={MONEY.columns.work} shares={takings.byWork} nameOf={workName} />
      <Shares title={MONEY.byPerson} why={MONEY.byPersonWhy} name={MONEY.columns.person} shares={takings.byPerson} nameOf={personName} />
    </>
  );
}

function workName(name: string | null): string {
  return name ?? MONEY.nothingCharged;
}

function byMethod({ payments }: Takings): readonly (readonly [Method, number])[] {
  return (Object.keys(MONEY.methods) as Method[]).flatMap((method) => {
    const mine = payments.map(({ payment }) => payment).filter((payment) => payment.method === method);
    return mine.length === 0 ? [] : [[method, paidOf(mine)] as const];
  });
}

function Days({ days }: { readonly days: readonly DayTakings[] }) {
  const times = useShopTimes();
  const { columns } = MONEY;
  const shown: readonly Column<DayTakings>[] = [
    { name: columns.day, kind: "day", cell: ({ day }) => times.weekday(day) },
    { name: columns.taken, kind: "figure", cell: ({ takenCents }) => times.money(takenCents) },
    { name: columns.given, kind: "figure", cell: ({ givenCents }) => (givenCents === 0 ? "" : times.money(givenCents)) },
    { name: columns.net, kind: "figure", cell: ({ takenCents, givenCents }) => times.money(takenCents - givenCents) },
  ];
  return (
    <section className="plate">
      <h2>{MONEY.byDay}</h2>
      <PlainTable name={MONEY.byDay} columns={shown} rows={days} keyOf={({ day }) => day} />
    </section>
  );
}

interface SharesProps {
  readonly title: string;
  readonly why: string;
  readonly name: string;
  readonly shares: readonly Share[];
  nameOf(name: string | null): string;
}

function Shares({ title, why, name, shares, nameOf }: SharesProps) {
  const times = useShopTimes();
  const columns: readonly Column<Share>[] = [
    { name, cell: (share) => nameOf(share.name) },
    { name: MONEY.columns.net, kind: "figure", cell: ({ cents }) => times.money(cents) },
  ];
  return (
    <section className="plate">
      <h2>{title}</h2>
      <PlainTable name={title} columns={columns} rows={shares} keyOf={(share) => share.name ?? ""} />
      <p className="note">{why}</p>
    </section>
  );
}

/** Amounts as plain figures with two decimals, refunds below nought, so that a spreadsheet adds them up. */
function saveTakings({ payments, currency }: Takings, { from, to }: Span): void {
  const rows = payments.map(({ payment: { at, kind, cents, tipCents, method, note }, day, bowlerName }) => [
    day,
    at,
    MONEY.kinds[kind],
    bowlerName ?? MONEY.nobody,
    (kind === "payment" ? cents : -cents) / 100,
    currency,
    MONEY.methods[method],
    note,
    (kind === "payment" ? tipCents : -tipCents) / 100,
  ]);
  saveText(csvText(Object.values(MONEY.csv), rows), `takings-${from}-${to}.csv`, "text/csv");
}
