import type { Ball } from "#contract/records/ball";
import { RecordsFault } from "#contract/records/fault";
import type { StageDone } from "#contract/records/stageDone";
import type { Ticket } from "#contract/records/ticket";
import type { workRoutes } from "#contract/routes/work";
import { type OutcomeReport, outcomeReport, type PlanOutcome } from "#engine/learning/outcomes";
import type { Records } from "#records/records";
import { everything } from "../everything.ts";
import { recordsProblems } from "../http/faults.ts";
import type { Handlers } from "../http/mount.ts";
import { Refusal } from "../http/refusal.ts";
import { keepLaneSide } from "../laneSide.ts";
import type { PlanBook } from "../plans/planBook.ts";
import type { QueueBook } from "../queue.ts";
import { hearQueue } from "../queueEvents.ts";
import { changed, changeOf, created, got, listed, writeOf } from "./keptHandlers.ts";

export function workHandlers(records: Records, plans: PlanBook, queue: QueueBook): Handlers<typeof workRoutes> {
  const { visits, tickets, stagesDone } = records;
  return {
    listVisits: listed(visits),
    getVisit: got(visits),
    createVisit: created(visits),
    changeVisit: changed(visits),

    listTickets: listed(tickets),
    getTicket: got(tickets),
    createTicket: created(tickets),
    changeTicket: changed(tickets),
    moveTicket: (request) => notNowWhereRefused(tickets.move(request.params.id, request.body.to, changeOf(request), request.body.why)),
    async keepPlan(request) {
      const plan = plans.toKeep(request.body.planId);
      if (plan === null) throw new Refusal("notNow", { detail: "There is no such plan, or it is not done." });
      return tickets.change(request.params.id, { plan }, changeOf(request));
    },

    outcomes: () => outcomesOf(records),

    listStagesDone: listed(stagesDone),
    getStageDone: got(stagesDone),
    createStageDone: created(stagesDone),

    keepLaneSide: (request) => keepLaneSide(records, request.body, writeOf(request)),

    queue: () => queue.now(),
    async queueStagesDone() {
      const { items } = await queue.now();
      const signed = await Promise.all(
        items.map(({ ticket: { id } }) => everything<StageDone>((after) => stagesDone.list({ after, where: { ticketId: id } }))),
      );
      return { items: signed.flat().toSorted((a, b) => a.doneAt.localeCompare(b.doneAt)) };
    },
    hearQueue: async () => hearQueue(queue),
  };
}

/** The move itself is a known one; it is the ticket that does not stand where it could be made. */
async function notNowWhereRefused<Thing>(move: Promise<Thing>): Promise<Thing> {
  try {
    return await move;
  } catch (fault) {
    if (!(fault instanceof RecordsFault) || fault.kind !== "refused") throw fault;
    throw new Refusal("notNow", { detail: "The ticket does not go there from where it stands.", problems: recordsProblems(fault) });
  }
}

/** What came of the work, over every ticket of which a bowler has said something. */
export async function outcomesOf({ tickets, balls }: Pick<Records, "tickets" | "balls">): Promise<OutcomeReport> {
  const answered = (await everything<Ticket>((after) => tickets.list({ after, limit: 500 }))).filter(({ outcome }) => outcome !== null);
  const covers = new Map<string, Ball["cover"]>();
  for (const { ballId } of answered) if (!covers.has(ballId)) covers.set(ballId, (await balls.get(ballId)).cover);
  return outcomeReport(
    answered.flatMap(({ outcome, ballId, symptoms, planSure }): PlanOutcome[] =>
      outcome === null ? [] : [{ outcome: outcome.answer, cover: covers.get(ballId) ?? null, symptoms, sureShare: planSure }],
    ),
  );
}
