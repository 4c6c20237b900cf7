import { z } from "zod";
import { SIDE_IDS, type SideId } from "#engine/surface/padWork/sides";
import { STAGE_KINDS } from "#engine/surface/stages";
import { count, mapping, oneOf, quantity, text } from "../job/fields.ts";
import { id, initials, instant, keptAs, listOf, longText, maybe } from "./fields.ts";

const side = oneOf([...SIDE_IDS] as [SideId, ...SideId[]], "A side");

export const stockUse = mapping(
  { stockItemId: id, quantity: quantity("", { above: 0, to: 100_000 }, "How much was used, in the item's own unit") },
  "Stock used",
);

/** A stage of the work that has been done, signed. What it used leaves the stock in the same breath. */
export const stageDoneWritten = mapping(
  {
    ticketId: id,
    personId: id,
    initials,
    startedAt: maybe(instant),
    doneAt: instant,
    /** Which stage of which plan of the ticket; null for signatures of before stages had ids. */
    stageId: maybe(text("Id of the stage")),
    revision: maybe(count("", { from: 0, to: 2_147_483_647 }, "Which plan of the ticket")),
    kind: maybe(oneOf(STAGE_KINDS, "Kind of stage")),
    /** What work written by hand is called, and all that old signatures know a stage by. */
    what: maybe(text("What was done")),
    /** Whether somebody signs for the whole stage; without it this tells of sides that are done. */
    signs: z.boolean({ error: "true or false" }).default(true),
    sidesDone: listOf(side, 6, "sides"),
    /** Sides that were found to be off and are to be worked once more; it says nothing else. */
    sidesAgain: listOf(side, 6, "sides"),
    /** How long each of those is worked; null: as the plan has it. */
    againSeconds: maybe(quantity("s", { above: 0, to: 3600 }, "Time on a side that is worked once more")),
    /** The side that somebody begins to work, and which device's clock runs for it; it says nothing else. */
    began: maybe(mapping({ side, device: text("Which device") }, "A side that is begun")),
    /** Cautions that somebody has read at this ball; it says nothing else. */
    cautionsRead: listOf(text("Id of a caution"), 20, "cautions"),
    /** What the clock ran in all, also on a side that was not finished. */
    secondsRun: maybe(quantity("s", { from: 0, to: 36_000 }, "Time that was worked")),
    /** The entry that this one takes back, and why; it says nothing else. */
    takesBack: maybe(id),
    abrasive: maybe(text("The abrasive")),
    way: maybe(oneOf(["spinner, wet", "spinner, dry", "hand, wet", "hand, dry"], "How it was worked")),
    /** Seconds on each side, in the order the sides were worked. */
    sideSeconds: listOf(quantity("s", { from: 0, to: 3600 }, "Time on one side"), 12, "sides"),
    pressureN: maybe(quantity("N", { from: 0, to: 500 }, "Pressure of the hand")),
    used: listOf(stockUse, 20, "things used"),
    note: longText,
  },
  "A stage that has been done",
);
export const stageDoneKept = keptAs(stageDoneWritten);
export type StageDoneWritten = z.input<typeof stageDoneWritten>;
export type StageDone = z.output<typeof stageDoneKept>;
