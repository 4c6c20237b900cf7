import { billOf } from "#contract/records/bill";
import { dayIn } from "#contract/records/dayIn";
import { type Payment, paidOf, tipsOf } from "#contract/records/money";
import { notPriced } from "#contract/records/pricedWork";
import type { StageDone } from "#contract/records/stageDone";
import { type TakenFor, takingsByPerson, takingsByWork } from "#contract/records/takings";
import type { Ticket } from "#contract/records/ticket";
import type { Visit } from "#contract/records/visit";
import type { Account, Takings, VisitAccount } from "#contract/routes/money";
import type { Records } from "#records/records";
import { everything } from "./everything.ts";
import { fieldRefusal } from "./http/refusal.ts";
import { nameOf } from "./nameOf.ts";

const DAY_MS = 86_400_000;
const MOST_DAYS = 366;
/** No zone is further than this from another (Line Islands and Baker Island: 26 h), and a clock of a counter may be a little wrong. */
const EARLIER_MS = 2 * DAY_MS;

type AccountParts = Pick<Records, "payments" | "tickets" | "balls">;

/** What one visit costs, what was paid of it, and what nobody priced. */
export async function accountOf({ payments, tickets, balls }: AccountParts, visit: Visit): Promise<Account> {
  const bill = billOf(visit);
  const ofVisit = await everything<Ticket>((after) => tickets.list({ after, where: { visitId: visit.id } }));
  const missed: Account["notPriced"] = [];
  for (const { id, ballId, state } of notPriced(visit, ofVisit))
    missed.push({ ticketId: id, ballName: await nameOf(balls, ballId), state });
  const paidCents = paidOf(await everything<Payment>((after) => payments.list({ after, where: { visitId: visit.id } })));
  const { taxRounding, taxIncluded, currency } = visit;
  return {
    ...bill,
    taxes: [...bill.taxes],
    taxRounding,
    taxIncluded,
    paidCents,
    owedCents: bill.totalCents - paidCents,
    currency,
    notPriced: missed,
  };
}

/** A visit with its account and whose it is. */
export async function visitAccount(records: AccountParts & Pick<Records, "bowlers">, visit: Visit): Promise<VisitAccount> {
  return {
    visit,
    bowlerName: visit.bowlerId === null ? null : await nameOf(records.bowlers, visit.bowlerId),
    account: await accountOf(records, visit),
  };
}

/**
 * What changed hands from one day to another, both included, as the shop's zone has days.
 *
 * @throws {Refusal} `invalid` where the days are the wrong way round or further apart than 366
 */
export async function takingsBetween(records: Records, from: string, to: string): Promise<Takings> {
  const days = (Date.parse(to) - Date.parse(from)) / DAY_MS + 1;
  if (days < 1 || days > MOST_DAYS)
    throw fieldRefusal("invalid", "to", to, `${from} or up to ${MOST_DAYS - 1} days later`, "The last day does not fit the first.");
  const { zone, currency } = await records.settings.get();
  const found = (await paymentsSince(records, new Date(Date.parse(from) - EARLIER_MS).toISOString()))
    .map((payment) => ({ payment, day: dayIn(zone, payment.at) }))
    .filter(({ day, payment }) => day >= from && day <= to && payment.currency === currency);
  const visits = new Map<string, Omit<TakenFor, "payment"> & { readonly bowlerName: string | null }>();
  for (const { visitId } of found.map(({ payment }) => payment))
    if (!visits.has(visitId)) visits.set(visitId, await workOf(records, visitId));
  const taken = found.flatMap(({ payment }) => {
    const visit = visits.get(payment.visitId);
    return visit === undefined ? [] : [{ payment, ...visit }];
  });
  return {
    currency,
    payments: found
      .map(({ payment, day }) => ({ payment, day, bowlerName: visits.get(payment.visitId)?.bowlerName ?? null }))
      .toSorted((a, b) => b.payment.at.localeCompare(a.payment.at)),
    byWork: [...takingsByWork(taken)],
    byPerson: [...takingsByPerson(taken)],
    tipCents: tipsOf(found.map(({ payment }) => payment)),
  };
}

/** Payments made since then; they are kept when they are made or later, so that older pages need not be looked at. */
async function paymentsSince({ payments }: Records, since: string): Promise<Payment[]> {
  const found: Payment[] = [];
  let after: string | null = null;
  do {
    const { items, next }: { readonly items: readonly Payment[]; readonly next: string | null } = await payments.list({
      after,
      limit: 500,
    });
    found.push(...items);
    after = items.some(({ createdAt }) => createdAt >= since) ? next : null;
  } while (after !== null);
  return found;
}

/** A visit's bill, and who signed its stages. */
async function workOf(records: Records, visitId: string) {
  const visit = await records.visits.get(visitId);
  const tickets = await everything<Ticket>((after) => records.tickets.list({ after, where: { visitId } }));
  const signed: string[] = [];
  for (const { id } of tickets) {
    const stages = await everything<StageDone>((after) => records.stagesDone.list({ after, where: { ticketId: id } }));
    signed.push(...stages.filter(({ signs }) => signs).map(({ personId }) => personId));
  }
  return { visit, signed, bowlerName: visit.bowlerId === null ? null : await nameOf(records.bowlers, visit.bowlerId) };
}
