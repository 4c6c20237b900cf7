import { z } from "zod";
import { COVER_IDS } from "#engine/ball/ball";
import { mapping, oneOf, text } from "../job/fields.ts";
import { longText } from "../records/fields.ts";
import { laneSideWritten } from "../records/laneSide.ts";
import { stageDoneKept, stageDoneWritten } from "../records/stageDone.ts";
import { ticketKept, ticketWritten } from "../records/ticket.ts";
import { TICKET_STATES } from "../records/ticketStates.ts";
import { visitKept, visitWritten } from "../records/visit.ts";
import { changeRoute, createRoute, getRoute, listRoute } from "./kept.ts";
import { takesPermille } from "./olderTax.ts";
import { idParams } from "./parts.ts";
import { answers, json, route } from "./route.ts";

/** A ticket that somebody has something to do about, with the names that a person looks for. */
const queuedSchema = z.strictObject({
  ticket: ticketKept,
  ballName: z.string(),
  bowlerName: z.string().nullable(),
});
export const queueSchema = z.strictObject({ items: z.array(queuedSchema) });
export type Queue = z.output<typeof queueSchema>;

const heldSchema = z.strictObject({ held: z.number(), of: z.number(), share: z.number(), low: z.number(), high: z.number() });
/** Which plans held: in all, by cover, by complaint, and against the odds that were told. */
export const outcomesSchema = z.strictObject({
  all: heldSchema,
  byCover: z.array(z.strictObject({ cover: z.enum(COVER_IDS), held: heldSchema })).readonly(),
  bySymptom: z.array(z.strictObject({ symptom: z.string(), held: heldSchema })).readonly(),
  calibration: z
    .array(z.strictObject({ from: z.number(), to: z.number(), said: z.number(), held: heldSchema, agrees: z.boolean() }))
    .readonly(),
  brier: z.number().nullable(),
});

const moved = { params: idParams, answer: answers(ticketKept), match: true, key: "allowed" } as const;

/** Visits, their tickets, the work on them, and the queue. */
export const workRoutes = {
  listVisits: listRoute("counter", "/api/visits", "visits", visitKept, ["bowlerId", "state"]),
  getVisit: getRoute("counter", "/api/visits/:id", "a visit", visitKept),
  createVisit: takesPermille(createRoute("counter", "/api/visits", "a visit", visitWritten, visitKept)),
  changeVisit: takesPermille(changeRoute("counter", "/api/visits/:id", "a visit", visitWritten, visitKept)),

  listTickets: listRoute("reader", "/api/tickets", "tickets", ticketKept, ["visitId", "ballId", "bowlerId", "state", "reworkOf"]),
  getTicket: getRoute("reader", "/api/tickets/:id", "a ticket", ticketKept),
  createTicket: createRoute("counter", "/api/tickets", "a ticket", ticketWritten, ticketKept),
  changeTicket: changeRoute("counter", "/api/tickets/:id", "a ticket", ticketWritten, ticketKept),
  moveTicket: route({
    least: "counter",
    ...moved,
    method: "post",
    path: "/api/tickets/:id/move",
    does: "Moves a ticket on to another state, where the states allow it; back to the one before with a reason, `why`",
    body: json(mapping({ to: oneOf(TICKET_STATES, "The state it moves to"), why: longText }, "A move")),
  }),
  keepPlan: route({
    least: "technician",
    ...moved,
    method: "post",
    path: "/api/tickets/:id/plan",
    does: "Keeps a computed plan with a ticket: its inputs, seed, assumptions and the engine's version",
    body: json(mapping({ planId: text("Id of a plan that is done") }, "Which plan")),
  }),

  outcomes: route({
    least: "reader",
    method: "get",
    path: "/api/outcomes",
    does: "Which plans held, as bowlers told: in all, by cover, by complaint, and against the odds that were told",
    answer: answers(outcomesSchema),
  }),

  listStagesDone: listRoute("reader", "/api/stages-done", "stages that have been done", stageDoneKept, ["ticketId", "personId"]),
  getStageDone: getRoute("reader", "/api/stages-done/:id", "a stage that has been done", stageDoneKept),
  createStageDone: createRoute(
    "technician",
    "/api/stages-done",
    "a stage that has been done; what it used leaves the stock",
    stageDoneWritten,
    stageDoneKept,
  ),

  keepLaneSide: takesPermille(
    route({
      least: "technician",
      method: "post",
      path: "/api/lane-side",
      does: "Keeps work done beside the lane as one: the ball where it is new, visit, ticket, signed stage, and where the ball went",
      body: json(laneSideWritten),
      answer: answers(ticketKept, 201),
      key: "required",
      location: "/api/tickets/:id",
    }),
  ),

  queue: route({
    least: "reader",
    method: "get",
    path: "/api/queue",
    does: "The tickets that are not collected or cancelled, by promise",
    answer: answers(queueSchema),
  }),
  queueStagesDone: route({
    least: "reader",
    method: "get",
    path: "/api/queue/stages-done",
    does: "Every stage that has been signed on the tickets of the queue, oldest first",
    answer: answers(z.strictObject({ items: z.array(stageDoneKept) })),
  }),
  hearQueue: route({
    least: "reader",
    method: "get",
    path: "/api/queue/events",
    does: "The queue now, and again after every change of it",
    answer: { kind: "events", status: 200, events: { queue: queueSchema } },
  }),
};
