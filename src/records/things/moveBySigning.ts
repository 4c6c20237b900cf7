import type { StageDone } from "#contract/records/stageDone";
import type { Ticket } from "#contract/records/ticket";
import { statesAfter, type TicketState } from "#contract/records/ticketStates";
import { stateBySigning, workOfTicket } from "#contract/records/ticketWork";
import { finishText } from "#engine/surface/finish";
import { type Session, timeOf } from "../session.ts";
import { balls } from "./balls.ts";
import { stageRead } from "./stageRead.ts";
import { store } from "./store.ts";
import { isStopped, ticketKind } from "./ticketKind.ts";

/** More entries of one ticket than there will ever be. */
const ALL = 500;

/** All that was written down at the bench for a ticket, in the order in which the shop was told. */
export async function signedOf(ticketId: string, session: Session): Promise<readonly StageDone[]> {
  return (await store(session, stageRead).list({ where: { ticketId }, limit: ALL, order: "oldest first" })).items;
}

/** Moves a ticket to where it stands by what was signed or taken back. Nothing is moved while work is stopped: what was signed all the same stays signed. */
export async function moveBySigning(ticketId: string, session: Session, by: string): Promise<Ticket> {
  const stored = store(session, ticketKind);
  const ticket = await stored.get(ticketId);
  const to = stateBySigning(ticket, workOfTicket(ticket, await signedOf(ticketId, session)));
  if (to === ticket.state || isStopped(ticket)) return ticket;
  const at = timeOf(session.now());
  const signedVersion = ticket.version + 1;
  const been = [...ticket.been, ...wayTo(ticket.state, to).map((state) => ({ state, at, by, signedVersion, why: "" }))];
  const readyAt = to === "ready" ? at : ticket.state === "ready" ? null : ticket.readyAt;
  const moved = await stored.alter(ticketId, () => ({ state: to, been, readyAt }), { by, expectedVersion: ticket.version }, "move");
  if (to === "ready" || ticket.state === "ready") await noteFinish(moved, session, by);
  return moved;
}

/** Work that begins and ends with one signature was in work in between. */
function wayTo(from: TicketState, to: TicketState): readonly TicketState[] {
  return to === "ready" && !statesAfter(from).includes(to) ? ["in work", to] : [to];
}

/** The finish that leaves the bench is part of the ball's own history: what was signed, not what was planned; and no more where it was taken back. */
export async function noteFinish(ticket: Ticket, session: Session, by: string): Promise<void> {
  const { id, ballId, readyAt } = ticket;
  const { finish } = workOfTicket(ticket, await signedOf(id, session));
  const stored = store(session, balls);
  const ball = await stored.get(ballId);
  const others = ball.surface.filter(({ ticketId }) => ticketId !== id);
  const isKnown = finish !== null && readyAt !== null;
  if (!isKnown && others.length === ball.surface.length) return;
  const entry = isKnown ? [{ at: readyAt, who: "shop", finish: finishText(finish), way: null, ticketId: id, note: "" }] : [];
  await stored.alter(ballId, () => ({ surface: [...others, ...entry] }), { by, expectedVersion: ball.version });
}
