import type { Ball } from "#contract/records/ball";
import type { LaneSide } from "#contract/records/laneSide";
import type { Ticket } from "#contract/records/ticket";
import type { VisitWritten } from "#contract/records/visit";
import { SIDE_IDS } from "#engine/surface/padWork/sides";
import type { Records, Things } from "#records/records";
import type { Write } from "#records/write";

/**
 * Keeps work that was done beside the lane: all of it or nothing, and once for its key.
 *
 * @returns the ticket, as far as it went
 * @throws {RecordsFault}
 */
export async function keepLaneSide(records: Records, told: LaneSide, write: Write): Promise<Ticket> {
  const knownId = told.ballId ?? (await idOfSerial(records, told.serial));
  return records.together(write, async (within) => {
    const by = { by: write.by };
    const ball = knownId === null ? await newBall(within, told, by) : await within.balls.get(knownId);
    const ticket = await ticketFor(within, ball, told, by);
    const inWork = await within.tickets.move(ticket.id, "in work", { ...by, expectedVersion: ticket.version });
    const { initials } = await within.people.get(write.by);
    const { what, abrasive, way, doneAt, used, note } = told;
    const [{ id: stageId, kind, sideIds }] = ticket.stages;
    const stage = { ticketId: ticket.id, stageId, revision: ticket.revision, kind, sidesDone: sideIds, what, abrasive, way, used, note };
    await within.stagesDone.create({ ...stage, personId: write.by, initials, doneAt }, by);
    const ready = await within.tickets.move(ticket.id, "ready", { ...by, expectedVersion: inWork.version });
    await sayHow(within, ready, told, by);
    if (told.whereTo !== "handed back") return ready;
    return within.tickets.move(ticket.id, "collected", { ...by, expectedVersion: ready.version });
  });
}

/** The ball that bears this whole number; null where none does, or several do. */
async function idOfSerial({ search }: Records, serial: string | null): Promise<string | null> {
  if (serial === null) return null;
  const { balls } = await search.find(serial);
  const same = balls.filter((ball) => ball.serial?.toLowerCase() === serial.toLowerCase());
  return same.length === 1 ? same[0].id : null;
}

function newBall(within: Things, { ballName, serial }: LaneSide, by: Write): Promise<Ball> {
  return within.balls.create({ name: ballName ?? "", serial }, by);
}

async function ticketFor(within: Things, ball: Ball, told: LaneSide, by: Write): Promise<Ticket> {
  const { currency } = await within.settings.get();
  const { bowlerId } = ball;
  const { doneAt, finish, finishBefore, what, abrasive, way } = told;
  const visit = await within.visits.create({ bowlerId, arrivedAt: doneAt, currency }, by);
  const stages = [{ what, kind: "cut" as const, abrasive, way, sides: SIDE_IDS.length, sideIds: [...SIDE_IDS] }];
  const ticket = await within.tickets.create(
    { visitId: visit.id, ballId: ball.id, bowlerId, receivedAt: doneAt, finishBefore, finishAfter: finish, stages },
    by,
  );
  await within.visits.change(visit.id, pricedAs(ticket.id, told), { ...by, expectedVersion: visit.version });
  return ticket;
}

/** Charged it is still to be paid; free it is settled; with neither it stays open, for somebody to price. */
function pricedAs(ticketId: string, { charge, freeWhy }: LaneSide): Partial<VisitWritten> {
  if (charge !== null) return { charges: [{ ...charge, ticketId }] };
  return freeWhy === null ? {} : { free: [{ ticketId, why: freeWhy }], state: "closed" };
}

/** The finish that was told with the signature, and how and when it was put on, is part of the ball's history. */
async function sayHow(within: Things, { id, ballId }: Ticket, { way, doneAt, finish }: LaneSide, by: Write): Promise<void> {
  const { surface, version } = await within.balls.get(ballId);
  const told = { at: doneAt, who: "shop", finish, way, ticketId: id, note: "" } as const;
  const others = surface.filter(({ ticketId }) => ticketId !== id);
  await within.balls.change(ballId, { surface: [...others, told] }, { ...by, expectedVersion: version });
}
