import { billOf } from "#contract/records/bill";
import { type Payment, paidOf } from "#contract/records/money";
import { notPriced } from "#contract/records/pricedWork";
import type { TicketState } from "#contract/records/ticketStates";
import type { Session } from "../session.ts";
import type { Definition } from "./definition.ts";
import { visits } from "./plainKinds.ts";
import { store } from "./store.ts";
import { ticketKind } from "./ticketKind.ts";

/** More balls, or payments, of one visit than there will ever be. */
const ALL = 500;

/** States in which a ball has left the shop. */
export const LEFT: readonly TicketState[] = ["collected", "cancelled"];

/**
 * A visit is closed when its last ball is handed over, all of the work has its price or is free, and the bill is paid; it is open again when a ball comes
 * back, or money is owed one way or the other.
 */
export async function closeVisit(visitId: string, payments: Definition<Payment>, session: Session, by: string): Promise<void> {
  const stored = store(session, visits);
  const visit = await stored.get(visitId);
  const where = { visitId };
  const { items: tickets } = await store(session, ticketKind).list({ where, limit: ALL });
  const { items: paid } = await store(session, payments).list({ where, limit: ALL });
  const hasLeft = tickets.length > 0 && tickets.every(({ state }) => LEFT.includes(state));
  const isSettled = billOf(visit).totalCents === paidOf(paid) && notPriced(visit, tickets).length === 0;
  const state = hasLeft && isSettled ? "closed" : "open";
  if (state !== visit.state) await stored.alter(visitId, () => ({ state }), { by, expectedVersion: visit.version });
}
