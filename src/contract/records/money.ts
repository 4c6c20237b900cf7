import type { z } from "zod";
import { count, mapping, oneOf, text } from "../job/fields.ts";
import { currency, day, id, instant, keptAs, longText, maybe, PRICED_WORK, plainCents, taxMillipercent } from "./fields.ts";

export const priceWritten = mapping(
  {
    name: text("What is charged for"),
    /** Charged by itself where such work is chosen at intake; null for what is only chosen by hand. */
    work: maybe(oneOf(PRICED_WORK, "Work that it is for")),
    eachCents: plainCents,
    currency,
    taxMillipercent: taxMillipercent.default(0),
    from: day,
    until: maybe(day),
    note: longText,
  },
  "A price",
);
export const priceKept = keptAs(priceWritten);
export type PriceWritten = z.input<typeof priceWritten>;
export type Price = z.output<typeof priceKept>;

/** Money that changed hands. Never altered: a mistake is put right by a refund. */
export const paymentWritten = mapping(
  {
    visitId: id,
    at: instant,
    kind: oneOf(["payment", "refund"], "Which way the money went"),
    /** The payment that is given back, for a refund. */
    refundOf: maybe(id),
    cents: plainCents.refine((amount) => amount > 0, { error: "a whole number above 0 cents" }),
    /** Given on top of it: not paid for the work, and not of the takings. */
    tipCents: plainCents.default(0),
    currency,
    method: oneOf(["cash", "card", "transfer", "other"], "How it was paid"),
    note: longText,
  },
  "A payment",
);
export const paymentKept = keptAs(paymentWritten);
export type PaymentWritten = z.input<typeof paymentWritten>;
export type Payment = z.output<typeof paymentKept>;

/** Refreshes bought ahead or used up; the balance is their sum. */
export const prepaidWritten = mapping(
  {
    bowlerId: id,
    visitId: maybe(id),
    at: instant,
    change: count("refreshes", { from: -1000, to: 1000 }, "Refreshes, negative when used"),
    note: longText,
  },
  "Prepaid refreshes",
);
export const prepaidKept = keptAs(prepaidWritten);
export type PrepaidWritten = z.input<typeof prepaidWritten>;
export type Prepaid = z.output<typeof prepaidKept>;

/** What has been paid less what was given back, cents. */
export function paidOf(payments: readonly Pick<Payment, "kind" | "cents">[]): number {
  return payments.reduce((sum, { kind, cents: amount }) => sum + (kind === "payment" ? amount : -amount), 0);
}

/** Tips less what was given back of them, cents. */
export function tipsOf(payments: readonly Pick<Payment, "kind" | "tipCents">[]): number {
  return payments.reduce((sum, { kind, tipCents }) => sum + (kind === "payment" ? tipCents : -tipCents), 0);
}
