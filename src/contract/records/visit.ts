import type { z } from "zod";
import { count, mapping, oneOf, text } from "../job/fields.ts";
import {
  currency,
  id,
  instant,
  keptAs,
  listOf,
  longText,
  maybe,
  plainCents,
  TAX_INCLUDED,
  TAX_ROUNDINGS,
  taxMillipercent,
} from "./fields.ts";

const charge = mapping(
  {
    what: text("What is charged for"),
    ticketId: maybe(id),
    quantity: count("", { from: 1, to: 1000 }, "How many").default(1),
    eachCents: plainCents,
    taxMillipercent: taxMillipercent.default(0),
    /** Paid for before: takes one of the bowler's prepaid refreshes instead of money. */
    prepaid: oneOf(["no", "yes"], "Whether a prepaid refresh pays it").default("no"),
  },
  "One line of the bill",
);

const taxRounding = oneOf(TAX_ROUNDINGS, "Where tax is rounded");
const taxIncluded = oneOf(TAX_INCLUDED, "Whether the prices hold their tax");

/** One bowler at the counter with one or more balls: one promise, one payment. */
export const visitWritten = mapping(
  {
    bowlerId: maybe(id),
    arrivedAt: instant,
    promisedFor: maybe(instant),
    /** Promises that somebody made otherwise than they were reckoned, and why; without a ticket for the whole visit. */
    promises: listOf(
      mapping({ at: instant, ticketId: maybe(id), promisedFor: instant, why: text("Why another time") }, "A promise"),
      100,
      "promises",
    ),
    state: oneOf(["open", "closed"], "Whether something is still to be done or paid").default("open"),
    currency,
    charges: listOf(charge, 200, "lines"),
    /** Balls of the visit whose work costs nothing, and why. */
    free: listOf(mapping({ ticketId: id, why: text("Why it is free") }, "Free work"), 200, "tickets"),
    discountCents: plainCents.default(0),
    discountWhy: longText,
    /** As the shop has settled on when the visit is made, unless it says otherwise. */
    taxRounding: maybe(taxRounding),
    taxIncluded: maybe(taxIncluded),
    note: longText,
  },
  "A visit",
);
/** What was kept before there were these was rounded for the whole bill, and the tax added to it. */
export const visitKept = keptAs(visitWritten.extend({ taxRounding: taxRounding.default("bill"), taxIncluded: taxIncluded.default("no") }));
export type VisitWritten = z.input<typeof visitWritten>;
export type Visit = z.output<typeof visitKept>;
