import type { StageKind } from "#engine/surface/stages";
import { dayIn, WEEKDAYS } from "./dayIn.ts";
import type { Openings } from "./settings.ts";
import type { Ticket } from "./ticket.ts";

const MINUTE_MS = 60_000;
const DAY_MS = 86_400_000;
const ROUND_MS = 30 * MINUTE_MS;
const LEAST_SECONDS = 3600;
/** Longer than any queue; a shop opens at least once a week. */
const MOST_DAYS = 400;

/** Monday to Saturday, 10 to 19: what is taken until a shop has said when it is open (common practice). */
export const USUAL_OPENINGS: Openings = {
  monday: { from: "10:00", until: "19:00" },
  tuesday: { from: "10:00", until: "19:00" },
  wednesday: { from: "10:00", until: "19:00" },
  thursday: { from: "10:00", until: "19:00" },
  friday: { from: "10:00", until: "19:00" },
  saturday: { from: "10:00", until: "19:00" },
  sunday: null,
};

export interface ToPromise {
  readonly nowMs: number;
  /** Time zone of the shop, of the IANA list. */
  readonly zone: string;
  readonly openings: Openings;
  /** Work at the bench that is to be done before, seconds. */
  readonly waitingSeconds: number;
  /** Work at the bench on the balls that are promised, seconds. */
  readonly ownSeconds: number;
  /** How long the slowest of them lies between: extraction and drying, seconds. It does so overnight too. */
  readonly restSeconds: number;
}

/**
 * When work can be promised for: the bench works while the shop is open, what waits comes first, and a ball is fetched while the shop is open. Rounded up to
 * half an hour, never sooner than an hour from now.
 */
export function promiseFor({ nowMs, zone, openings, waitingSeconds, ownSeconds, restSeconds }: ToPromise): string {
  const worked = (fromMs: number, seconds: number) => afterWork(fromMs, 1000 * seconds, zone, openings);
  const before = worked(nowMs, waitingSeconds);
  const done = before + 1000 * restSeconds;
  const ready = Math.max(worked(done, ownSeconds), nowMs + 1000 * LEAST_SECONDS);
  return new Date(whenOpen(Math.ceil(ready / ROUND_MS) * ROUND_MS, zone, openings)).toISOString();
}

/** When the bench is through with what waits. */
export function benchFreeFrom({ nowMs, zone, openings, waitingSeconds }: Omit<ToPromise, "ownSeconds" | "restSeconds">): string {
  return new Date(afterWork(nowMs, 1000 * waitingSeconds, zone, openings)).toISOString();
}

/** When so much work is done that only goes on while the shop is open, ms. */
export function afterWork(fromMs: number, workMs: number, zone: string, openings: Openings): number {
  let left = workMs;
  for (const { opensMs, closesMs } of openTimes(fromMs, zone, openings)) {
    const begins = Math.max(opensMs, fromMs);
    if (begins + left <= closesMs) return begins + left;
    left -= Math.max(0, closesMs - begins);
  }
  return fromMs + workMs;
}

/** That moment where the shop is open then, or when it opens next, ms. */
export function whenOpen(atMs: number, zone: string, openings: Openings): number {
  for (const { opensMs, closesMs } of openTimes(atMs, zone, openings)) if (atMs <= closesMs) return Math.max(atMs, opensMs);
  return atMs;
}

type Stages = readonly Pick<Ticket["stages"][number], "kind" | "secondsPerSide" | "sides">[];

const HOUR_SECONDS = 3600;
/** Where the stage itself says nothing, seconds: the oil sweats out in about an hour, and the ball wants two to be dry and cool (common practice). */
const USUAL_REST: Partial<Record<StageKind, number>> = { extract: HOUR_SECONDS, dryOff: 2 * HOUR_SECONDS };

/** How long a ball takes at the bench, seconds: as the bench's pace has it, or as long as its stages alone take where that is more. */
export function benchSecondsOf(stages: Stages, ballsPerHour: number): number {
  const atBench = stages.filter(({ kind }) => kind === null || !(kind in USUAL_REST));
  return Math.max(HOUR_SECONDS / ballsPerHour, summed(atBench, 0));
}

/** How long it lies for oil to come out and to dry, seconds. */
export function restSecondsOf(stages: Stages): number {
  return stages.reduce((sum, stage) => sum + (stage.kind === null ? 0 : summed([stage], USUAL_REST[stage.kind] ?? null)), 0);
}

/** Seconds of stages; where one says none, the usual. @param usual null: it is none of those that are counted */
function summed(stages: Stages, usual: number | null): number {
  if (usual === null) return 0;
  return stages.reduce((sum, { secondsPerSide, sides }) => sum + ((secondsPerSide ?? 0) * (sides ?? 1) || usual), 0);
}

function* openTimes(fromMs: number, zone: string, openings: Openings) {
  const first = Date.parse(dayIn(zone, new Date(fromMs).toISOString()));
  for (let i = 0; i < MOST_DAYS; i++) {
    const day = new Date(first + i * DAY_MS);
    const open = openings[WEEKDAYS[day.getUTCDay()]];
    const written = day.toISOString().slice(0, 10);
    if (open !== null) yield { opensMs: instantAt(zone, written, open.from), closesMs: instantAt(zone, written, open.until) };
  }
}

/**
 * The moment at which clocks of a zone show a time of day; where they are put back, the first of the two.
 *
 * @param day 2026-05-31
 * @param time 18:30
 * @returns ms since 1970
 */
export function instantAt(zone: string, day: string, time: string): number {
  const shown = Date.parse(`${day}T${time}:00.000Z`);
  // The offset of a moment near it may be that of the other side of a change of clocks; the second look is at the right side.
  const near = shown - offsetMs(zone, shown - DAY_MS);
  return shown - offsetMs(zone, near);
}

/** How far clocks of a zone are ahead of UTC at a moment. */
function offsetMs(zone: string, atMs: number): number {
  const parts = new Intl.DateTimeFormat("en", {
    timeZone: zone,
    hourCycle: "h23",
    year: "numeric",
    month: "numeric",
    day: "numeric",
    hour: "numeric",
    minute: "numeric",
  }).formatToParts(new Date(atMs));
  const part = (type: Intl.DateTimeFormatPartTypes) => Number(parts.find((one) => one.type === type)?.value);
  const shown = Date.UTC(part("year"), part("month") - 1, part("day"), part("hour"), part("minute"));
  return shown - Math.floor(atMs / MINUTE_MS) * MINUTE_MS;
}
