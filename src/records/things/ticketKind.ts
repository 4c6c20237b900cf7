import { type Ticket, ticketKept, ticketWritten } from "#contract/records/ticket";
import { stageId } from "#contract/records/ticketWork";
import type { Definition } from "./definition.ts";
import { promiseProblems } from "./plainKinds.ts";
import { store } from "./store.ts";

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
  async check(ticket, before, session) {
    const late = before?.promisedFor === ticket.promisedFor ? [] : promiseProblems(ticket.promisedFor, ticket.receivedAt);
    if (ticket.reworkOf === null) return late;
    const first = await store(session, ticketKind).get(ticket.reworkOf);
    return first.ballId === ticket.ballId
      ? late
      : [...late, { path: "reworkOf", value: ticket.reworkOf, allowed: "a ticket of the same ball" }];
  },
};

/** A new plan counts as one, and its stages are named after it: a signature of the old plan never becomes one of another stage. */
function numbered(stages: Ticket["stages"], before: Ticket | null): Pick<Ticket, "stages" | "revision"> {
  const plain = (of: Ticket["stages"]) => JSON.stringify(of.map((stage) => ({ ...stage, id: "" })));
  if (before !== null && plain(before.stages) === plain(stages)) return { stages: before.stages, revision: before.revision };
  const revision = before === null ? 0 : before.revision + 1;
  return { stages: stages.map((stage, i) => ({ ...stage, id: stageId(revision, i) })), revision };
}

/** Whether something was found on the ball that work must wait for. */
export function isStopped({ stops }: Pick<Ticket, "stops">): boolean {
  return stops.some(({ clearedAt }) => clearedAt === null);
}
