import type { z } from "zod";
import { mapping, oneOf, quantity, text } from "../job/fields.ts";
import { id, initials, instant, keptAs, listOf, longText, maybe } from "./fields.ts";

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
    what: text("What was done"),
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
