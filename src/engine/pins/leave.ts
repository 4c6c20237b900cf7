import { refuse } from "../fault.ts";

/** Pins standing after a ball, bit n − 1 for pin n: 0 is a strike, 1023 a full rack. */
export type Leave = number;

export const STRIKE: Leave = 0;
const ALL_PINS: Leave = 1023;
/** The same pin seen in a mirror: what a left-hander's pin is called. */
const MIRRORED_PIN = [1, 3, 2, 6, 5, 4, 10, 9, 8, 7] as const;

export function pinsOf(leave: Leave): readonly number[] {
  return MIRRORED_PIN.flatMap((_, i) => ((leave >> i) & 1 ? [i + 1] : []));
}

export function leaveOf(pins: readonly number[]): Leave {
  return pins.reduce((bits, pin) => bits | (1 << (pin - 1)), 0);
}

/** The leave as the trade writes it: `2-8-10`; a strike is `X`. */
export function leaveText(leave: Leave): string {
  return leave === STRIKE ? "X" : pinsOf(leave).join("-");
}

/**
 * Reads `2-8-10`, `10`, `X`.
 *
 * @throws EngineFault naming `path` when a pin is not 1–10 or stands twice.
 */
export function parseLeave(text: string, path: string): Leave {
  const said = text.trim();
  if (said.toUpperCase() === "X") return STRIKE;
  const pins = said.split("-").map(Number);
  const isLeave = pins.every((pin) => Number.isInteger(pin) && pin >= 1 && pin <= 10) && new Set(pins).size === pins.length;
  return isLeave ? leaveOf(pins) : refuse(path, text, "pins from 1 to 10, each once, as 2-8-10; or X for a strike");
}

/** A left-hander's leave, from the same hit of a right-hander seen in a mirror. */
export function mirrored(leave: Leave): Leave {
  return leaveOf(pinsOf(leave).map((pin) => MIRRORED_PIN[pin - 1]));
}

export function pinsDown(leave: Leave): number {
  return 10 - pinsOf(leave).length;
}

export function isLeave(leave: Leave): boolean {
  return Number.isInteger(leave) && leave >= 0 && leave <= ALL_PINS;
}
