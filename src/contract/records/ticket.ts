import { z } from "zod";
import { OUTCOMES } from "#engine/learning/outcomes";
import { FORCES, type Force } from "#engine/surface/cut";
import { SIDE_IDS, type SideId } from "#engine/surface/padWork/sides";
import { STAGE_KINDS } from "#engine/surface/stages";
import { mapping, oneOf, text } from "../job/fields.ts";
import { WEEKDAYS } from "./dayIn.ts";
import { finishText, id, instant, keptAs, listOf, longText, maybe } from "./fields.ts";
import { predicted } from "./predicted.ts";
import { TICKET_STATES } from "./ticketStates.ts";

const PLAN_ALLOWED = "a plan's inputs: a job file as values";
/** What a plan was made from, so that it can be made again and compared. */
const plan = mapping(
  {
    madeAt: instant,
    engineVersion: text("Version of the engine"),
    seed: z.int({ error: "a whole number" }).min(0),
    inputs: z.record(z.string(), z.unknown(), { error: PLAN_ALLOWED }),
    assumptions: z.record(z.string(), z.number({ error: "a number" }), { error: "assumptions by name, each a number" }).default({}),
    pick: maybe(finishText),
  },
  "A finish plan",
);

/** Where and when a ball is to be bowled. Null is not known; a pattern may be "the usual one" of the house without anybody knowing its oil. */
const playedOn = mapping(
  {
    houseId: maybe(id),
    patternId: maybe(id),
    pattern: maybe(oneOf(["the usual"], "The house's usual oil, where no pattern is named")),
    night: maybe(oneOf(WEEKDAYS, "The night it is bowled on")),
  },
  "Where and when the ball is to be bowled",
);

const FORCE_IDS = Object.keys(FORCES) as [Force, ...Force[]];
const SIDES = [...SIDE_IDS] as [SideId, ...SideId[]];

const stagePlanned = mapping(
  {
    /** Its own in the ticket, also among stages planned before; the shop gives it with every new plan, whatever is sent. */
    id: z.string({ error: "text" }).max(40, { error: "text of up to 40 letters" }).default(""),
    /** What work written by hand is called. Of any other stage its kind tells what it is, in the language of whoever reads; some of before say it here too. */
    what: maybe(text("What is done")),
    /** As the engine has it, for the timers and cautions of the bench; null for work written by hand. */
    kind: maybe(oneOf(STAGE_KINDS, "Kind of stage")),
    force: maybe(oneOf(FORCE_IDS, "How hard it is pressed")),
    sideIds: listOf(oneOf(SIDES, "A side"), 6, "sides"),
    cautions: listOf(text("Id of a caution"), 20, "cautions"),
    abrasive: maybe(text("The abrasive")),
    way: maybe(text("Wet or dry, spinner or hand")),
    secondsPerSide: maybe(z.number({ error: "0 ≤ x ≤ 3600 s" }).min(0, { error: "0 ≤ x ≤ 3600 s" }).max(3600, { error: "0 ≤ x ≤ 3600 s" })),
    sides: maybe(z.int({ error: "1 ≤ x ≤ 6" }).min(1, { error: "1 ≤ x ≤ 6" }).max(6, { error: "1 ≤ x ≤ 6" })),
  },
  "A stage of the work",
);

/** One ball's work in a visit. */
export const ticketWritten = mapping(
  {
    visitId: id,
    ballId: id,
    /** As the visit has it; kept here so that a bowler's work is found at once. */
    bowlerId: maybe(id),
    receivedAt: instant,
    complaint: longText,
    symptoms: listOf(text("A symptom"), 50, "symptoms"),
    whatChanged: maybe(oneOf(["all balls", "only this one", "not known"], "Did all balls change, or only this one?")),
    findings: longText,
    /** Whether a fingernail catches on its scratches; null where nobody has looked. */
    scratches: maybe(oneOf(["deep", "none"], "How deep the scratches are")),
    /** A reason to stop work: a crack, a hollow sound. Work goes on when it has been cleared. */
    stops: listOf(mapping({ at: instant, why: text("Why"), clearedAt: maybe(instant), clearedWhy: longText }, "A stop"), 50, "stops"),
    finishBefore: maybe(finishText),
    finishAfter: maybe(finishText),
    plan: maybe(plan),
    stages: listOf(stagePlanned, 60, "stages"),
    /** Sides that did not agree and were left so, with the reason. */
    keptAsIs: listOf(
      mapping({ at: instant, places: listOf(text("A place"), 20, "places"), why: text("Why") }, "Left as it is"),
      50,
      "entries",
    ),
    /** What the ball is wanted for, as it was told at the counter. */
    playedOn: maybe(playedOn),
    /** Why the ball has this ticket beside another that is open still; empty where there was none. */
    besidesWhy: longText,
    /** The ticket whose work is done again, free. */
    reworkOf: maybe(id),
    promisedFor: maybe(instant),
    /** How sure the finish plan was whose pick this finish is; null where no plan was made, or another finish was taken. */
    planSure: maybe(z.number({ error: "0 ≤ x ≤ 1" }).min(0, { error: "0 ≤ x ≤ 1" }).max(1, { error: "0 ≤ x ≤ 1" })),
    /** What the plan said that the ball will do; null where none was taken, or the finish has no line. It speaks of the finish that it names alone. */
    predicted: maybe(predicted),
    /** What the bowler said of it at the next visit. */
    outcome: maybe(mapping({ at: instant, answer: oneOf(OUTCOMES, "Whether it did what was said") }, "What came of it")),
  },
  "A ticket",
);
export const ticketKept = keptAs(
  z.strictObject({
    ...ticketWritten.shape,
    state: oneOf(TICKET_STATES, "Where the ticket stands"),
    /**
     * Every state it has been in, oldest first. `signedVersion`: where a signature moved it, the version of the ticket that came of that; null where somebody
     * moved it. `why`: where it was put back, the reason.
     */
    been: z.array(
      z.strictObject({
        state: oneOf(TICKET_STATES, "State"),
        at: instant,
        by: id,
        signedVersion: z.int().min(1).nullable().default(null),
        why: longText,
      }),
    ),
    readyAt: instant.nullable(),
    collectedAt: instant.nullable(),
    /** Counts up with every change of the stages. */
    revision: z.int().min(0).default(0),
  }),
);
export type TicketWritten = z.input<typeof ticketWritten>;
export type Ticket = z.output<typeof ticketKept>;
