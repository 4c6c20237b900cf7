import { Link } from "wouter";
import type { Ticket } from "#contract/records/ticket";
import type { VisitAccount } from "#contract/routes/money";
import { BOWLER } from "#words/en/rooms/bowler";
import { TICKET_STATE_WORDS } from "#words/en/rooms/today";
import { type Column, PlainTable } from "../../pieces/PlainTable.tsx";
import { everyPage } from "../../shop/everyPage.ts";
import { Reading } from "../../shop/Reading.tsx";
import { answered, shop } from "../../shop/shopClient.ts";
import { useBag } from "../../shop/useBalls.ts";
import { useRead } from "../../shop/useShop.ts";
import { useShopTimes } from "../../shop/zone.ts";

/** Every visit with its tickets, what it cost and what was paid, newest first. */
export function Visits({ bowlerId }: { readonly bowlerId: string }) {
  const accounts = useRead(["visits", "accounts", bowlerId], () =>
    everyPage((after) => answered(shop.accounts.$get({ query: { bowlerId, limit: "200", ...after } }))),
  );
  const tickets = useRead(["tickets", "all of", bowlerId], () =>
    everyPage((after) => answered(shop.tickets.$get({ query: { bowlerId, limit: "200", order: "oldest first", ...after } }))),
  );
  const names = new Map(useBag(bowlerId).data?.map(({ id, name }) => [id, name]));
  return (
    <section className="plate">
      <h2>{BOWLER.visits}</h2>
      <Reading of={accounts} isEmpty={(all) => all.length === 0} empty={BOWLER.noVisits}>
        {(all) => <VisitTable accounts={all} tickets={tickets.data ?? []} names={names} />}
      </Reading>
    </section>
  );
}

interface TicketProps {
  readonly tickets: readonly Ticket[];
  /** Of the balls that the bowler has today. */
  readonly names: ReadonlyMap<string, string>;
}

function VisitTable({ accounts, tickets, names }: TicketProps & { readonly accounts: readonly VisitAccount[] }) {
  const times = useShopTimes();
  const { visitColumns } = BOWLER;
  const columns: readonly Column<VisitAccount>[] = [
    { name: visitColumns.on, kind: "day", cell: ({ visit }) => times.day(visit.arrivedAt) },
    {
      name: visitColumns.balls,
      cell: ({ visit }) => <TicketLinks tickets={tickets.filter(({ visitId }) => visitId === visit.id)} names={names} />,
    },
    { name: visitColumns.total, kind: "figure", cell: ({ account }) => times.money(account.totalCents) },
    { name: visitColumns.paid, kind: "figure", cell: ({ account }) => times.money(account.paidCents) },
    {
      name: visitColumns.owed,
      kind: "figure",
      cell: ({ account }) => (account.owedCents === 0 ? "" : <strong>{times.money(account.owedCents)}</strong>),
    },
  ];
  return <PlainTable name={BOWLER.visits} columns={columns} rows={accounts} keyOf={({ visit }) => visit.id} />;
}

function TicketLinks({ tickets, names }: TicketProps) {
  if (tickets.length === 0) return BOWLER.noTickets;
  return (
    <ul className="plain-links">
      {tickets.map(({ id, ballId, finishAfter, state }) => (
        <li key={id}>
          <Link href={`/tickets/${id}`}>{BOWLER.ticket(names.get(ballId) ?? null, finishAfter, TICKET_STATE_WORDS[state])}</Link>
        </li>
      ))}
    </ul>
  );
}
