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
  const ownVisits = await all(session, visits, "bowlerId", [bowlerId]);
  const ownTickets = unique([
    ...(await all(session, ticketKind, "bowlerId", [bowlerId])),
    ...(await all(session, ticketKind, "visitId", idsOf(ownVisits))),
  ]);
  const ballIds = idsOf(ownBalls);
  const ticketIds = idsOf(ownTickets);
  const either = async <Thing extends Kept>(definition: Definition<Thing>) =>
    unique([...(await all(session, definition, "ballId", ballIds)), ...(await all(session, definition, "ticketId", ticketIds))]);
  return {
    bowler,
    balls: ownBalls,
    visits: ownVisits,
    tickets: ownTickets,
    stagesDone: await all(session, stageKind, "ticketId", ticketIds),
    readings: await either(readings),
    profileFiles: await either(profileFileKind),
    photos: unique([...(await either(photoKind)), ...(await all(session, photoKind, "bowlerId", [bowlerId]))]),
    shotNotes: await all(session, shotNotes, "bowlerId", [bowlerId]),
    payments: await all(session, paymentKind, "visitId", idsOf(ownVisits)),
    prepaid: await all(session, prepaidKind, "bowlerId", [bowlerId]),
  };
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
