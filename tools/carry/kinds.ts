import type { Outcome } from "./hit.ts";

/** Pins as bits: pin n is bit n − 1. */
export function pinsToBits(pins: readonly number[]): number {
  return pins.reduce((bits, pin) => bits | (1 << (pin - 1)), 0);
}

/** The outcomes that published rates tell apart; everything else is the last. */
export const KINDS = ["strike", "10", "7", "9", "8", "7-10", "other"] as const;
export type Kind = (typeof KINDS)[number];

const LEAVES: readonly number[] = [0, pinsToBits([10]), pinsToBits([7]), pinsToBits([9]), pinsToBits([8]), pinsToBits([7, 10])];

export function kindOf({ leave }: Outcome): number {
  const kind = LEAVES.indexOf(leave);
  return kind < 0 ? KINDS.length - 1 : kind;
}

const IDEAL_PATH = pinsToBits([1, 3, 5, 9]);

/** The published ideal: the ball itself meets pins 1, 3, 5 and 9 and no other. */
export function isIdealPath({ touched }: Outcome): boolean {
  return touched === IDEAL_PATH;
}
