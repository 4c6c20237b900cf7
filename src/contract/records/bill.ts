import type { Visit } from "./visit.ts";

/** A whole price in thousandths of a percent. */
const WHOLE = 100_000n;

/** The tax of all lines of one rate. */
export interface TaxOfRate {
  readonly taxMillipercent: number;
  readonly cents: number;
}

export interface Bill {
  /** Cents, before discount; with the tax where the prices hold it. */
  readonly linesCents: number;
  readonly discountCents: number;
  /** Of each rate above nought, the highest first; together they are `taxCents`. */
  readonly taxes: readonly TaxOfRate[];
  /** Added to the lines, or in them, as the visit has it. */
  readonly taxCents: number;
  readonly totalCents: number;
}

/** What a bill is made of. */
export type Billed = Pick<Visit, "charges" | "discountCents" | "taxRounding" | "taxIncluded">;

/**
 * What a visit costs. The discount lowers each line in proportion before tax is taken. Tax is rounded once for each rate of the bill or once for each line,
 * as the visit has it, half away from zero; until then it is reckoned in whole numbers, so that a half is a half.
 */
export function billOf({ charges, discountCents, taxRounding, taxIncluded }: Billed): Bill {
  const lines = charges
    .filter(({ prepaid }) => prepaid === "no")
    .map(({ quantity, eachCents, taxMillipercent }) => ({ cents: quantity * eachCents, taxMillipercent }));
  const linesCents = summed(lines);
  const discount = Math.min(discountCents, linesCents);
  const taxOf = (cents: number, taxMillipercent: number) =>
    linesCents === 0
      ? 0
      : quotient(
          BigInt(cents) * BigInt(linesCents - discount) * BigInt(taxMillipercent),
          BigInt(linesCents) * (taxIncluded === "yes" ? WHOLE + BigInt(taxMillipercent) : WHOLE),
        );
  const rates = [...new Set(lines.map(({ taxMillipercent }) => taxMillipercent))].filter((rate) => rate > 0).toSorted((a, b) => b - a);
  const taxes = rates.map((rate) => {
    const ofRate = lines.filter(({ taxMillipercent }) => taxMillipercent === rate);
    const rounded = taxRounding === "line" ? ofRate.map(({ cents }) => ({ cents: taxOf(cents, rate) })) : null;
    return { taxMillipercent: rate, cents: rounded === null ? taxOf(summed(ofRate), rate) : summed(rounded) };
  });
  const taxCents = summed(taxes);
  return {
    linesCents,
    discountCents: discount,
    taxes,
    taxCents,
    totalCents: linesCents - discount + (taxIncluded === "yes" ? 0 : taxCents),
  };
}

function summed(parts: readonly { readonly cents: number }[]): number {
  return parts.reduce((sum, { cents }) => sum + cents, 0);
}

/** Rounded to a whole number, a half away from zero. @param above ≥ 0 @param below > 0 */
function quotient(above: bigint, below: bigint): number {
  return Number((2n * above + below) / (2n * below));
}
