import { figureOrNull } from "../../shop/typedValues.ts";

/** Tax as it is typed, in per cent, in thousandths; what is no figure goes to the shop as it is, to be refused with what is allowed. */
export function permilleOf(percent: string): number {
  const figure = figureOrNull(percent);
  // Per cent have one decimal; without rounding 8.1 × 10 would not be a whole number.
  return typeof figure === "number" ? Math.round(100 * figure) / 10 : (figure ?? 0);
}

/** A price as it is typed, in the smallest unit of the currency; what is no figure goes to the shop as it is. */
export function centsTyped(amount: string): number {
  const figure = figureOrNull(amount);
  return typeof figure === "number" ? Math.round(100 * figure) : (amount as unknown as number);
}
