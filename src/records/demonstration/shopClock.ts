/** A clock that stands where it is put: an invented shop's records are made at the invented times. */
export interface ShopClock {
  readonly now: () => number;
  /** Puts the clock to a moment. */
  at(ms: number): void;
  /** Now, as it is written. */
  text(): string;
}

export const MINUTE = 60_000;
export const HOUR = 60 * MINUTE;
export const DAY = 24 * HOUR;

export function shopClock(startMs: number): ShopClock {
  let time = startMs;
  return {
    now: () => time,
    at(ms) {
      // Never back: what was made later also says so.
      time = Math.max(time, Math.round(ms));
    },
    text: () => new Date(time).toISOString(),
  };
}

/** The calendar day of a moment. */
export function dayOf(ms: number): string {
  return new Date(ms).toISOString().slice(0, 10);
}
