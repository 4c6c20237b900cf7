/** How many of the newest backups are kept for each: of the last days, weeks, months, years one each. */
export const RETENTION = { newest: 3, days: 14, weeks: 8, months: 24, years: 10 } as const;

/** A scheduled backup is due when the last one is as old as this, ms. */
export const DUE_AFTER_MS = 20 * 3600 * 1000;

const DAY_MS = 86_400_000;
/** 1 January 1970 was a Thursday: weeks begin on Monday. */
const DAYS_TO_MONDAY = 3;

/**
 * Which backups to keep: the newest ones, and of each of the last days, weeks, months and years the newest. All in UTC.
 *
 * @param madeAt times of the backups, ISO UTC
 * @param now milliseconds since 1970; backups that seem to come from the future are kept
 */
export function backupsToKeep(madeAt: readonly string[], now: number): Set<string> {
  const newestFirst = [...madeAt].sort().reverse();
  const keep = new Set(newestFirst.slice(0, RETENTION.newest));
  const month = (time: number) => new Date(time).getUTCFullYear() * 12 + new Date(time).getUTCMonth();
  const calendars: readonly [(time: number) => number, number][] = [
    [(time) => Math.floor(time / DAY_MS), RETENTION.days],
    [(time) => Math.floor((time / DAY_MS + DAYS_TO_MONDAY) / 7), RETENTION.weeks],
    [month, RETENTION.months],
    [(time) => new Date(time).getUTCFullYear(), RETENTION.years],
  ];
  for (const [spanOf, most] of calendars) {
    const seen = new Set<number>();
    for (const at of newestFirst) {
      const span = spanOf(Date.parse(at));
      if (span <= spanOf(now) - most || seen.has(span)) continue;
      seen.add(span);
      keep.add(at);
    }
  }
  return keep;
}

/** Whether the next scheduled backup should be made. */
export function isDue(madeAt: readonly string[], now: number): boolean {
  const last = [...madeAt].sort().at(-1);
  return last === undefined || now - Date.parse(last) >= DUE_AFTER_MS;
}
