import { type Billed, billOf } from "./bill.ts";
import type { Payment } from "./money.ts";

/** One payment or refund with what is needed to say what it was for. */
export interface TakenFor {
  readonly payment: Pick<Payment, "kind" | "cents">;
  readonly visit: Billed;
  /** Who signed the stages of the visit, once for each stage. */
  readonly signed: readonly string[];
}

/** Part of what was taken. A null name is money that nothing was charged for, or for which nobody signed a stage. */
export interface Share {
  readonly name: string | null;
  readonly cents: number;
}

/** What was taken by what it was charged for, in proportion to the lines of each visit's bill. The parts add up to the cent. */
export function takingsByWork(taken: readonly TakenFor[]): readonly Share[] {
  return summed(
    taken.flatMap(({ payment, visit }) => {
      const paying = visit.charges.filter(({ prepaid }) => prepaid === "no");
      // A line with its own tax; the discount lowers all alike.
      const weights = paying.map((charge) => ({
        name: charge.what,
        weight: billOf({ ...visit, charges: [charge], discountCents: 0 }).totalCents,
      }));
      return parts(signedCents(payment), weights);
    }),
  );
}

/** What was taken by who did the work, in proportion to the stages that each person signed. */
export function takingsByPerson(taken: readonly TakenFor[]): readonly Share[] {
  return summed(
    taken.flatMap(({ payment, signed }) =>
      parts(
        signedCents(payment),
        signed.map((name) => ({ name, weight: 1 })),
      ),
    ),
  );
}

function signedCents({ kind, cents }: TakenFor["payment"]): number {
  return kind === "payment" ? cents : -cents;
}

/** Parts of an amount by weight: each ends where its share of the whole ends, rounded, so that no cent is lost or made. */
function parts(cents: number, weights: readonly { readonly name: string; readonly weight: number }[]): Share[] {
  const whole = weights.reduce((sum, { weight }) => sum + weight, 0);
  if (whole === 0) return [{ name: null, cents }];
  const ends = weights.map((_, i) => Math.round((cents * weights.slice(0, i + 1).reduce((sum, { weight }) => sum + weight, 0)) / whole));
  return weights.map(({ name }, i) => ({ name, cents: ends[i] - (ends[i - 1] ?? 0) }));
}

/** Most first. */
function summed(shares: readonly Share[]): readonly Share[] {
  const byName = new Map<string | null, number>();
  for (const { name, cents } of shares) byName.set(name, (byName.get(name) ?? 0) + cents);
  return [...byName].map(([name, cents]) => ({ name, cents })).toSorted((a, b) => b.cents - a.cents);
}
