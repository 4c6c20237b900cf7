import type { Ball } from "#contract/records/ball";
import type { Kept } from "#contract/records/fields";
import type { Session } from "../session.ts";
import { photoKind, profileFileKind } from "../things/attachments.ts";
import { balls } from "../things/balls.ts";
import { bowlers } from "../things/bowlers.ts";
import type { Definition } from "../things/definition.ts";
import { paymentKind, prepaidKind } from "../things/payments.ts";
import { readings, shotNotes, visits } from "../things/plainKinds.ts";
import { stageKind } from "../things/stock.ts";
import { store } from "../things/store.ts";
import { ticketKind } from "../things/tickets.ts";

const PAGE = 500;

/** Everything that hangs on one bowler, by kind. */
export type OfBowler = Awaited<ReturnType<typeof gather>>;

/** @throws {RecordsFault} `notFound` */
export async function gather(session: Session, bowlerId: string) {
  const bowler = await store(session, bowlers).get(bowlerId);
  const ownBalls = await all(session, balls, "bowlerId", [bowlerId]);
  const ballIds = idsOf(ownBalls);
  const visitsByName = await all(session, visits, "bowlerId", [bowlerId]);
  // Their ball, brought in before anybody had said whose it was.
  const unclaimed = (await all(session, ticketKind, "ballId", ballIds)).filter((ticket) => ticket.bowlerId === null);
  const visitsUnclaimed = (
    await Promise.all([...new Set(unclaimed.map(({ visitId }) => visitId))].map((id) => store(session, visits).get(id)))
  ).filter((visit) => visit.bowlerId === null);
  const ownVisits = unique([...visitsByName, ...visitsUnclaimed]);
  const ownTickets = unique([
    ...(await all(session, ticketKind, "bowlerId", [bowlerId])),
    ...(await all(session, ticketKind, "visitId", idsOf(visitsByName))),
    ...unclaimed.filter(({ visitId }) => visitsUnclaimed.some(({ id }) => id === visitId)),
  ]);
  const ticketIds = idsOf(ownTickets);
  const either = async <Thing extends Kept>(definition: Definition<Thing>) =>
    unique([...(await all(session, definition, "ballId", ballIds)), ...(await all(session, definition, "ticketId", ticketIds))]);
  return {
    bowler,
    balls: ownBalls,
    /** Somebody else's by now, or nobody's. */
    formerBalls: await formerlyOf(session, bowlerId),
    visits: ownVisits,
    tickets: ownTickets,
    stagesDone: await all(session, stageKind, "ticketId", ticketIds),
    readings: await either(readings),
    profileFiles: await either(profileFileKind),
    photos: unique([...(await either(photoKind)), ...(await all(session, photoKind, "bowlerId", [bowlerId]))]),
    shotNotes: await all(session, shotNotes, "bowlerId", [bowlerId]),
    /** With their balls, and nobody's name. */
    shotNotesOfBalls: (await either(shotNotes)).filter((note) => note.bowlerId === null),
    payments: await all(session, paymentKind, "visitId", idsOf(ownVisits)),
    prepaid: await all(session, prepaidKind, "bowlerId", [bowlerId]),
  };
}

async function formerlyOf(session: Session, bowlerId: string): Promise<Ball[]> {
  const rows = await session.db.selectFrom("balls").select("id").where("body", "like", `%${bowlerId}%`).execute();
  const found = await Promise.all(rows.map(({ id }) => store(session, balls).get(id)));
  return found.filter((ball) => ball.bowlerId !== bowlerId);
}

async function all<Thing extends Kept>(
  session: Session,
  definition: Definition<Thing>,
  field: string,
  ids: readonly string[],
): Promise<Thing[]> {
  const found: Thing[] = [];
  for (const value of ids) {
    for (let after: string | null | undefined; after !== null; ) {
      const { items, next } = await store(session, definition).list({ where: { [field]: value }, limit: PAGE, after: after ?? null });
      found.push(...items);
      after = next;
    }
  }
  return found;
}

function idsOf(things: readonly Kept[]): string[] {
  return things.map(({ id }) => id);
}

function unique<Thing extends Kept>(things: readonly Thing[]): Thing[] {
  return [...new Map(things.map((thing) => [thing.id, thing])).values()];
}
