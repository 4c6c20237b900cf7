import type { ThingKind } from "#contract/records/auditEntry";
import type { Ball } from "#contract/records/ball";
import type { Kept } from "#contract/records/fields";
import type { ThingRow } from "../database/tables.ts";
import type { Session } from "../session.ts";
import { photoKind, profileFileKind } from "../things/attachments.ts";
import { balls } from "../things/balls.ts";
import { bowlers } from "../things/bowlers.ts";
import type { Definition } from "../things/definition.ts";
import { paymentKind, prepaidKind } from "../things/payments.ts";
import { readings, shotNotes, visits } from "../things/plainKinds.ts";
import { readRow } from "../things/rows.ts";
import { isUnreadable } from "../things/setAside.ts";
import { stageKind } from "../things/stagesDone.ts";
import { store } from "../things/store.ts";
import { tableOf } from "../things/table.ts";
import { ticketKind } from "../things/ticketKind.ts";

/** Everything that hangs on one bowler, by kind. */
export type OfBowler = Awaited<ReturnType<typeof gather>>;

/** Takes a row that cannot be read, and hangs on the bowler. */
type Unread = (kind: ThingKind, row: ThingRow) => Promise<void>;

/** @throws {RecordsFault} `notFound`; `unreadable` where the bowler cannot be read, and another thing where nobody takes it */
export async function gather(session: Session, bowlerId: string, unread?: Unread) {
  const all = <Thing extends Kept>(definition: Definition<Thing>, field: string, ids: readonly string[]) =>
    allOf(session, definition, field, ids, unread);
  const bowler = await store(session, bowlers).get(bowlerId);
  const ownBalls = await all(balls, "bowlerId", [bowlerId]);
  const ballIds = idsOf(ownBalls);
  const visitsByName = await all(visits, "bowlerId", [bowlerId]);
  // Their ball, brought in before anybody had said whose it was.
  const unclaimed = (await all(ticketKind, "ballId", ballIds)).filter((ticket) => ticket.bowlerId === null);
  const visitsUnclaimed = (
    await Promise.all([...new Set(unclaimed.map(({ visitId }) => visitId))].map((id) => store(session, visits).get(id)))
  ).filter((visit) => visit.bowlerId === null);
  const ownVisits = unique([...visitsByName, ...visitsUnclaimed]);
  const ownTickets = unique([
    ...(await all(ticketKind, "bowlerId", [bowlerId])),
    ...(await all(ticketKind, "visitId", idsOf(visitsByName))),
    ...unclaimed.filter(({ visitId }) => visitsUnclaimed.some(({ id }) => id === visitId)),
  ]);
  const ticketIds = idsOf(ownTickets);
  const either = async <Thing extends Kept>(definition: Definition<Thing>) =>
    unique([...(await all(definition, "ballId", ballIds)), ...(await all(definition, "ticketId", ticketIds))]);
  return {
    bowler,
    balls: ownBalls,
    /** Somebody else's by now, or nobody's. */
    formerBalls: await formerlyOf(session, bowlerId),
    visits: ownVisits,
    tickets: ownTickets,
    stagesDone: await all(stageKind, "ticketId", ticketIds),
    readings: await either(readings),
    profileFiles: await either(profileFileKind),
    photos: unique([...(await either(photoKind)), ...(await all(photoKind, "bowlerId", [bowlerId]))]),
    shotNotes: await all(shotNotes, "bowlerId", [bowlerId]),
    /** With their balls, and nobody's name. */
    shotNotesOfBalls: (await either(shotNotes)).filter((note) => note.bowlerId === null),
    payments: await all(paymentKind, "visitId", idsOf(ownVisits)),
    prepaid: await all(prepaidKind, "bowlerId", [bowlerId]),
  };
}

async function formerlyOf(session: Session, bowlerId: string): Promise<Ball[]> {
  const rows = await session.db.selectFrom("balls").select("id").where("body", "like", `%${bowlerId}%`).execute();
  const found = await Promise.all(rows.map(({ id }) => store(session, balls).get(id)));
  return found.filter((ball) => ball.bowlerId !== bowlerId);
}

async function allOf<Thing extends Kept>(
  { db }: Session,
  definition: Definition<Thing>,
  field: string,
  ids: readonly string[],
  unread: Unread | undefined,
): Promise<Thing[]> {
  const found: Thing[] = [];
  for (const value of ids)
    for (const row of (await tableOf(db, definition.kind).selectAll().where(field, "=", value).orderBy("id").execute()) as ThingRow[])
      try {
        found.push(readRow(definition, row).thing);
      } catch (fault) {
        if (unread === undefined || !isUnreadable(fault)) throw fault;
        await unread(definition.kind, row);
      }
  return found;
}

function idsOf(things: readonly Kept[]): string[] {
  return things.map(({ id }) => id);
}

function unique<Thing extends Kept>(things: readonly Thing[]): Thing[] {
  return [...new Map(things.map((thing) => [thing.id, thing])).values()];
}
