import { figureOrNull } from "../../shop/typedValues.ts";

/** Tax as it is typed, in percent, in thousandths of one; what is no figure goes to the shop as it is, to be refused with what is allowed. */
export function millipercentOf(percent: string): number {
  const figure = figureOrNull(percent);
  // A percent has three decimals; a fourth is left, to be refused. Without rounding 8.2 × 1000 would not be a whole number.
  return typeof figure === "number" ? Math.round(10_000 * figure) / 10 : (figure ?? 0);
}

/** Tax as it stands in a field, in percent. */
export function percentTyped(millipercent: number): string {
  return String(millipercent / 1000);
}

/** A price as it is typed, in the smallest unit of the currency; what is no figure goes to the shop as it is. */
export function centsTyped(amount: string): number {
  const figure = figureOrNull(amount);
  return typeof figure === "number" ? Math.round(100 * figure) : (amount as unknown as number);
}
