import type { z } from "zod";
import { count, mapping, oneOf, text } from "../job/fields.ts";
import { currency, day, id, instant, keptAs, longText, maybe, plainCents, taxPermille } from "./fields.ts";
import type { Visit } from "./visit.ts";

export const priceWritten = mapping(
  {
    name: text("What is charged for"),
    eachCents: plainCents,
    currency,
    taxPermille: taxPermille.default(0),
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

export interface Bill {
  /** Cents, before discount and tax. */
  readonly linesCents: number;
  readonly discountCents: number;
  readonly taxCents: number;
  readonly totalCents: number;
}

/**
 * What a visit costs. The discount lowers each line in proportion before tax is taken; tax is rounded once per rate, half away from zero.
 */
export function billOf({ charges, discountCents }: Pick<Visit, "charges" | "discountCents">): Bill {
  const paying = charges.filter(({ prepaid }) => prepaid === "no");
  const linesCents = paying.reduce((sum, { quantity, eachCents }) => sum + quantity * eachCents, 0);
  const discount = Math.min(discountCents, linesCents);
  const share = linesCents === 0 ? 0 : (linesCents - discount) / linesCents;
  const byRate = new Map<number, number>();
  for (const { quantity, eachCents, taxPermille: rate } of paying) byRate.set(rate, (byRate.get(rate) ?? 0) + quantity * eachCents);
  const taxCents = [...byRate].reduce((sum, [rate, base]) => sum + Math.round((base * share * rate) / 1000), 0);
  return { linesCents, discountCents: discount, taxCents, totalCents: linesCents - discount + taxCents };
}

/** What has been paid less what was given back, cents. */
export function paidOf(payments: readonly Pick<Payment, "kind" | "cents">[]): number {
  return payments.reduce((sum, { kind, cents: amount }) => sum + (kind === "payment" ? amount : -amount), 0);
}
