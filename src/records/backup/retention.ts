/** How many of the newest backups are kept for each: of the last days, weeks, months, years one each. */
export const RETENTION = { newest: 3, days: 14, weeks: 8, months: 24, years: 10 } as const;

/** A scheduled backup is due when the last one is as old as this, ms. */
export const DUE_AFTER_MS = 20 * 3600 * 1000;

const DAY_MS = 86_400_000;
/** 1 January 1970 was a Thursday: weeks begin on Monday. */
const DAYS_TO_MONDAY = 3;

/** Days, weeks, months or years: which of them a time is in, when one begins, and of how many the newest backup is kept. */
interface Calendar {
  readonly spanOf: (time: number) => number;
  readonly startOf: (span: number) => number;
  readonly most: number;
}

const CALENDARS: readonly Calendar[] = [
  { spanOf: (time) => Math.floor(time / DAY_MS), startOf: (span) => span * DAY_MS, most: RETENTION.days },
  {
    spanOf: (time) => Math.floor((time / DAY_MS + DAYS_TO_MONDAY) / 7),
    startOf: (span) => (span * 7 - DAYS_TO_MONDAY) * DAY_MS,
    most: RETENTION.weeks,
  },
  {
    spanOf: (time) => new Date(time).getUTCFullYear() * 12 + new Date(time).getUTCMonth(),
    startOf: (span) => Date.UTC(Math.floor(span / 12), span % 12),
    most: RETENTION.months,
  },
  { spanOf: (time) => new Date(time).getUTCFullYear(), startOf: (span) => Date.UTC(span), most: RETENTION.years },
];

/**
 * Which backups to keep: the newest ones, and of each of the last days, weeks, months and years the newest. All in UTC.
 *
 * @param madeAt times of the backups, ISO UTC
 * @param now milliseconds since 1970; backups that seem to come from the future are kept
 */
export function backupsToKeep(madeAt: readonly string[], now: number): Set<string> {
  const newestFirst = [...madeAt].sort().reverse();
  const keep = new Set(newestFirst.slice(0, RETENTION.newest));
  for (const { spanOf, most } of CALENDARS) {
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

/**
 * When a backup will not be kept any more, where one goes on being made every day: the last of a week outlasts that week's others.
 *
 * @param at one of them
 * @param madeAt times of all of them, ISO UTC
 * @returns milliseconds since 1970; the hour after, it goes
 */
export function keptUntil(at: string, madeAt: readonly string[]): number {
  const time = Date.parse(at);
  const known = madeAt.map((one) => Date.parse(one));
  const times = [...known, Math.max(...known, time) + DAY_MS];
  const until = CALENDARS.filter(({ spanOf }) => !times.some((other) => other > time && spanOf(other) === spanOf(time))).map(
    ({ spanOf, startOf, most }) => startOf(spanOf(time) + most),
  );
  return Math.max(...until, time + RETENTION.newest * DAY_MS);
}

/** Whether the next scheduled backup should be made. */
export function isDue(madeAt: readonly string[], now: number): boolean {
  const last = [...madeAt].sort().at(-1);
  return last === undefined || now - Date.parse(last) >= DUE_AFTER_MS;
}
