const HOUR_MS = 3_600_000;
const ROUND_MS = HOUR_MS / 2;
const LEAST_HOURS = 1;

/**
 * When work can be promised for: after the balls that wait and those of this visit, at the bench's pace, rounded up to half an hour, never sooner than an hour.
 *
 * @param nowMs ms since 1970
 * @param waiting balls that are to be done before
 * @param balls of this visit, ≥ 1
 * @param ballsPerHour of the bench, > 0
 */
export function promiseFor(nowMs: number, waiting: number, balls: number, ballsPerHour: number): string {
  const hours = Math.max(LEAST_HOURS, (waiting + balls) / ballsPerHour);
  return new Date(Math.ceil((nowMs + hours * HOUR_MS) / ROUND_MS) * ROUND_MS).toISOString();
}
