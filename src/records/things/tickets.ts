import { RecordsFault } from "#contract/records/fault";
import { type Ticket, ticketKept, ticketWritten } from "#contract/records/ticket";
import { statesAfter, TICKET_STATES, type TicketState } from "#contract/records/ticketStates";
import { stageId, workOfTicket } from "#contract/records/ticketWork";
import { finishText } from "#engine/surface/finish";
import type { Tickets } from "../records.ts";
import { type Session, timeOf } from "../session.ts";
import type { ChangeOn } from "../write.ts";
import { balls } from "./balls.ts";
import type { Definition, Fields } from "./definition.ts";
import { visits } from "./plainKinds.ts";
import { checkedFields } from "./rows.ts";
import { stageRead } from "./stageRead.ts";
import { store } from "./store.ts";

/** What may be done with a ball that work has been stopped on. */
const DESPITE_STOP: readonly TicketState[] = ["warranty hold", "waiting for approval", "cancelled"];

export const ticketKind: Definition<Ticket> = {
  kind: "tickets",
  written: ticketWritten,
  kept: ticketKept,
  lookups: {
    visitId: "visits",
    ballId: "balls",
    bowlerId: "bowlers",
    state: null,
    reworkOf: "tickets",
    receivedAt: null,
    readyAt: null,
  },
  filledIn: async ({ stages }, before) => (stages === undefined ? {} : numbered(stages as Ticket["stages"], before)),
  async check(ticket, _before, session) {
    if (ticket.reworkOf === null) return [];
    const first = await store(session, ticketKind).get(ticket.reworkOf);
    return first.ballId === ticket.ballId ? [] : [{ path: "reworkOf", value: ticket.reworkOf, allowed: "a ticket of the same ball" }];
  },
};

/** A new plan counts as one, and its stages are named after it: a signature of the old plan never becomes one of another stage. */
function numbered(stages: Ticket["stages"], before: Ticket | null): Pick<Ticket, "stages" | "revision"> {
  const plain = (of: Ticket["stages"]) => JSON.stringify(of.map((stage) => ({ ...stage, id: "" })));
  if (before !== null && plain(before.stages) === plain(stages)) return { stages: before.stages, revision: before.revision };
  const revision = before === null ? 0 : before.revision + 1;
  return { stages: stages.map((stage, i) => ({ ...stage, id: stageId(revision, i) })), revision };
}

export function tickets(session: Session): Tickets {
  const stored = store(session, ticketKind);
  return {
    get: stored.get,
    list: stored.list,
    change: stored.change,
    create: (written, write) =>
      session.write(write, async (inside) => {
        const fields = checkedFields(ticketWritten, written, "tickets");
        const at = timeOf(inside.now());
        const begun = { state: "received", been: [{ state: "received", at, by: write.by }], readyAt: null, collectedAt: null };
        return store(inside, ticketKind).make({ ...fields, bowlerId: await bowlerOf(fields, inside) }, begun, { by: write.by });
      }),
    move: (id, to, write) =>
      session.write(write, async (inside) => {
        const moved = await store(inside, ticketKind).alter(
          id,
          (before) => move(before, to, write.by, timeOf(inside.now())),
          plain(write),
          "move",
        );
        if (to === "ready") await noteFinish(moved, inside, write.by);
        return moved;
      }),
  };
}

function plain({ by, expectedVersion }: ChangeOn): ChangeOn {
  return { by, expectedVersion };
}

async function bowlerOf(fields: Fields, session: Session): Promise<unknown> {
  if (fields.bowlerId !== null) return fields.bowlerId;
  return (await store(session, visits).get(fields.visitId as string)).bowlerId;
}

function move(before: Ticket, to: TicketState, by: string, at: string): Fields {
  const allowed = TICKET_STATES.filter((state) => mayMove(before, state));
  if (!allowed.includes(to))
    throw new RecordsFault("refused", `tickets ${before.id}`, {
      problems: [{ path: "state", value: to, allowed: allowed.length === 0 ? "none: the ticket has ended" : allowed.join(", ") }],
    });
  const times = { ...(to === "ready" ? { readyAt: at } : {}), ...(to === "collected" ? { collectedAt: at } : {}) };
  return { state: to, been: [...before.been, { state: to, at, by }], ...times };
}

function mayMove(ticket: Ticket, to: TicketState): boolean {
  const isStopped = ticket.stops.some(({ clearedAt }) => clearedAt === null);
  return statesAfter(ticket.state).includes(to) && (!isStopped || DESPITE_STOP.includes(to));
}

/** More entries of one ticket than there will ever be. */
const ALL = 500;

/** The finish that leaves the bench is part of the ball's own history: what was signed, not what was planned. */
async function noteFinish(ticket: Ticket, session: Session, by: string): Promise<void> {
  const { id, ballId, readyAt } = ticket;
  const { items } = await store(session, stageRead).list({ where: { ticketId: id }, limit: ALL, order: "oldest first" });
  const { finish } = workOfTicket(ticket, items);
  if (finish === null || readyAt === null) return;
  const stored = store(session, balls);
  const ball = await stored.get(ballId);
  const entry = { at: readyAt, who: "shop", finish: finishText(finish), way: null, ticketId: id, note: "" };
  const surface = [...ball.surface.filter(({ ticketId }) => ticketId !== id), entry];
  await stored.alter(ballId, () => ({ surface }), { by, expectedVersion: ball.version });
}
