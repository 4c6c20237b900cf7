import { afterWork, USUAL_OPENINGS, whenOpen } from "#contract/records/promise";
import type { Dice } from "./dice.ts";
import { HOUR } from "./shopClock.ts";

/*
 * When the invented shop is open: people come and fetch, and work is done, at no other time.
 */

export const ZONE = "America/Chicago";

/** A moment some time after another one, while the shop is open, ms. */
export function someTime(dice: Dice, fromMs: number, hours: readonly [number, number]): number {
  let ms = fromMs + dice.between(...hours) * HOUR;
  while (!isOpen(ms)) ms += 3 * HOUR;
  return ms;
}

/** The last moment no later than this one, by the hour, at which the shop is open, ms. */
export function openBefore(atMs: number): number {
  let ms = atMs;
  while (!isOpen(ms)) ms -= HOUR;
  return ms;
}

/** When something can begin that is not left lying over night, ms. */
export function beginOf(fromMs: number, lastsMs: number): number {
  let ms = whenOpen(fromMs, ZONE, USUAL_OPENINGS);
  while (afterWork(ms, lastsMs, ZONE, USUAL_OPENINGS) !== ms + lastsMs) ms = whenOpen(ms + HOUR / 4, ZONE, USUAL_OPENINGS);
  return ms;
}

function isOpen(ms: number): boolean {
  return whenOpen(ms, ZONE, USUAL_OPENINGS) === ms;
}
