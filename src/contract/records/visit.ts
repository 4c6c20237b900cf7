import type { z } from "zod";
import { count, mapping, oneOf, text } from "../job/fields.ts";
import { currency, id, instant, keptAs, listOf, longText, maybe, plainCents, taxPermille } from "./fields.ts";

const charge = mapping(
  {
    what: text("What is charged for"),
    ticketId: maybe(id),
    quantity: count("", { from: 1, to: 1000 }, "How many").default(1),
    eachCents: plainCents,
    taxPermille: taxPermille.default(0),
    /** Paid for before: takes one of the bowler's prepaid refreshes instead of money. */
    prepaid: oneOf(["no", "yes"], "Whether a prepaid refresh pays it").default("no"),
  },
  "One line of the bill",
);

/** One bowler at the counter with one or more balls: one promise, one payment. */
export const visitWritten = mapping(
  {
    bowlerId: maybe(id),
    arrivedAt: instant,
    promisedFor: maybe(instant),
    state: oneOf(["open", "closed"], "Whether something is still to be done or paid").default("open"),
    currency,
    charges: listOf(charge, 200, "lines"),
    discountCents: plainCents.default(0),
    discountWhy: longText,
    note: longText,
  },
  "A visit",
);
export const visitKept = keptAs(visitWritten);
export type VisitWritten = z.input<typeof visitWritten>;
export type Visit = z.output<typeof visitKept>;
