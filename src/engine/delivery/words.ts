import type { Bowler, DeliveryKnown, Spread } from "./bowler.ts";

/**
 * Numbers for those who have none: what a shop hears, and what it stands for. All *common practice*: typical league deliveries; the middle row is the
 * matched bowler of docs/model/situations.md. An answer in words is a default and is listed as one.
 */
export const SPEED_WORDS = {
  slow: { speedMph: 15 },
  medium: { speedMph: 17.5 },
  fast: { speedMph: 19.5 },
} as const satisfies Record<string, Pick<Bowler, "speedMph">>;

export const HOOK_WORDS = {
  little: { revRateRpm: 230, axisRotationDeg: 30, axisTiltDeg: 15 },
  medium: { revRateRpm: 320, axisRotationDeg: 45, axisTiltDeg: 14 },
  much: { revRateRpm: 420, axisRotationDeg: 50, axisTiltDeg: 11 },
} as const satisfies Record<string, Pick<Bowler, "revRateRpm" | "axisRotationDeg" | "axisTiltDeg">>;

/** How far a number taken from a word, or from nobody at all, may be off: a third of the way to the next word, about (chosen). */
export const KNOWN_BY_WORD: DeliveryKnown = { speedMph: 1.2, revRateRpm: 60, axisRotationDeg: 10, axisTiltDeg: 5 };

export type SpeedWord = keyof typeof SPEED_WORDS;
export type HookWord = keyof typeof HOOK_WORDS;

/** The word that a measured speed is nearest to. */
export function speedWordOf(speedMph: number): SpeedWord {
  return nearestWord(SPEED_WORDS, ({ speedMph: of }) => of, speedMph);
}

/** The word that a counted rev rate is nearest to. */
export function hookWordOf(revRateRpm: number): HookWord {
  return nearestWord(HOOK_WORDS, ({ revRateRpm: of }) => of, revRateRpm);
}

function nearestWord<Word extends string, Meaning>(
  words: Readonly<Record<Word, Meaning>>,
  of: (meaning: Meaning) => number,
  to: number,
): Word {
  const entries = Object.entries(words) as [Word, Meaning][];
  const away = ([, meaning]: [Word, Meaning]) => Math.abs(of(meaning) - to);
  return entries.reduce((best, one) => (away(one) < away(best) ? one : best))[0];
}

/** A good league bowler's variation from shot to shot; common practice, no source. */
export const TYPICAL_SPREAD: Spread = { launchAngleDeg: 0.35, laydownBoards: 0.7, speedMph: 0.35, revRateRpm: 12, axisRotationDeg: 3 };
