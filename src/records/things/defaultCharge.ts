import { dayIn } from "#contract/records/dayIn";
import { isPriced, lineAt, pricesOn, usualPrices, workIn } from "#contract/records/pricedWork";
import type { Ticket } from "#contract/records/ticket";
import { type Session, timeOf } from "../session.ts";
import { balls } from "./balls.ts";
import { prices, visits } from "./plainKinds.ts";
import { settingsKind } from "./settings.ts";
import { store } from "./store.ts";

/** More prices than a list will ever have. */
const ALL = 500;

/** Work that is planned is charged by the price list, where that is clear and nobody has charged it or let it off yet. */
export async function chargeByDefault(ticket: Ticket, session: Session, by: string): Promise<void> {
  const stored = store(session, visits);
  const visit = await stored.get(ticket.visitId);
  if (ticket.stages.length === 0 || isPriced(ticket, visit)) return;
  const { zone } = await store(session, settingsKind).get(session.shopId);
  const { items } = await store(session, prices).list({ limit: ALL });
  const usual = usualPrices(workIn(ticket.stages), pricesOn(items, dayIn(zone, timeOf(session.now())), visit.currency));
  if (usual === null) return;
  const { name } = await store(session, balls).get(ticket.ballId);
  const charges = [...visit.charges, ...usual.map((price) => lineAt(price, name, ticket.id))];
  await stored.alter(visit.id, () => ({ charges }), { by, expectedVersion: visit.version });
}
