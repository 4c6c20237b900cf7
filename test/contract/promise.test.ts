import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { benchSecondsOf, instantAt, promiseFor, restSecondsOf, type ToPromise, USUAL_OPENINGS } from "#contract/records/promise";

const ZONE = "America/Chicago";
const HOUR = 3600;
/** Friday 2026-05-29 in Chicago, five hours behind (IANA time zone database). */
const friday = (time: string) => instantAt(ZONE, "2026-05-29", time);
const promised = (time: string, change: Partial<ToPromise>) =>
  shown(
    promiseFor({
      nowMs: friday(time),
      zone: ZONE,
      openings: USUAL_OPENINGS,
      waitingSeconds: 0,
      ownSeconds: HOUR / 3,
      restSeconds: 0,
      ...change,
    }),
  );
const shown = (instant: string) =>
  new Intl.DateTimeFormat("en", { timeZone: ZONE, weekday: "short", hour: "2-digit", minute: "2-digit", hourCycle: "h23" }).format(
    new Date(instant),
  );

describe("what can be promised", () => {
  it.each([
    ["a ball in the morning: never sooner than an hour", "11:00", {}, "Fri 12:00"],
    ["two hours of work before it, rounded up", "11:00", { waitingSeconds: 2 * HOUR }, "Fri 13:30"],
    ["six balls at five: their two hours end as the shop closes", "17:00", { ownSeconds: 2 * HOUR }, "Fri 19:00"],
    [
      "six balls at five with one before them is not 19:30 but tomorrow",
      "17:00",
      { waitingSeconds: HOUR / 3, ownSeconds: 2 * HOUR },
      "Sat 10:30",
    ],
    ["what is left on Saturday evening is Monday's", "17:00", { waitingSeconds: 10.5 * HOUR, ownSeconds: HOUR }, "Mon 10:30"],
    ["before it opens, work begins when it does", "07:00", {}, "Fri 10:30"],
    ["after it has closed, tomorrow", "19:30", {}, "Sat 10:30"],
    ["drying goes on overnight, the cut after it does not", "17:00", { restSeconds: 12 * HOUR, ownSeconds: HOUR }, "Sat 11:00"],
    ["three hours of extraction and drying by day", "11:00", { restSeconds: 3 * HOUR, ownSeconds: HOUR / 2 }, "Fri 14:30"],
  ] as const)("%s", (_, time, change, answer) => {
    expect(promised(time, change)).toBe(answer);
  });

  it("goes by the shop's own hours", () => {
    const openings = {
      ...USUAL_OPENINGS,
      friday: { from: "12:00", until: "22:00" },
      saturday: null,
      sunday: { from: "08:00", until: "12:00" },
    };
    expect(promised("17:00", { openings, ownSeconds: 3 * HOUR })).toBe("Fri 20:00");
    expect(promised("17:00", { openings, ownSeconds: 6 * HOUR })).toBe("Sun 09:00");
  });

  it("is always while the shop is open, at a half hour, at least an hour away, and no sooner for more work", () => {
    const seconds = fc.integer({ min: 0, max: 60 * HOUR });
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 3 * 365 * 24 * 60 }), seconds, seconds, seconds, (minute, waiting, own, rest) => {
        const nowMs = Date.parse("2026-01-01T00:00:00.000Z") + minute * 60_000;
        const made = { nowMs, zone: ZONE, openings: USUAL_OPENINGS, waitingSeconds: waiting, ownSeconds: own, restSeconds: rest };
        const at = promiseFor(made);
        const [weekday, time] = shown(at).split(" ");
        expect(weekday).not.toBe("Sun");
        expect(time >= "10:00" && time <= "19:00", shown(at)).toBe(true);
        expect(Date.parse(at) % 1_800_000).toBe(0);
        expect(Date.parse(at)).toBeGreaterThanOrEqual(nowMs + 3_600_000);
        expect(Date.parse(promiseFor({ ...made, ownSeconds: own + HOUR }))).toBeGreaterThanOrEqual(Date.parse(at));
      }),
      { seed: 13, numRuns: 300 },
    );
  });
});

describe("how long a ball takes", () => {
  const stage = (kind: "cut" | "extract" | "dryOff" | "check", secondsPerSide: number | null, sides: number | null) => ({
    kind,
    secondsPerSide,
    sides,
  });
  it("is the bench's pace, or its stages where those alone are longer; what it lies for is apart", () => {
    expect(benchSecondsOf([], 3)).toBe(1200);
    expect(benchSecondsOf([stage("cut", 60, 6), stage("extract", null, null)], 3)).toBe(1200);
    expect(benchSecondsOf([stage("cut", 240, 6), stage("check", null, null)], 3)).toBe(1440);
    expect(restSecondsOf([stage("cut", 60, 6)])).toBe(0);
    expect(restSecondsOf([stage("extract", 0, null), stage("dryOff", null, null)])).toBe(3 * HOUR);
    expect(restSecondsOf([stage("extract", 1800, null), stage("dryOff", 600, null)])).toBe(2400);
  });
});

describe("a time of day where the shop is (IANA time zone database)", () => {
  it.each([
    ["winter", "2026-01-15", "10:00", "2026-01-15T16:00:00.000Z"],
    ["summer", "2026-07-15", "10:00", "2026-07-15T15:00:00.000Z"],
    ["the day on which clocks go forward", "2026-03-08", "10:00", "2026-03-08T15:00:00.000Z"],
    ["the day on which they go back", "2026-11-01", "10:00", "2026-11-01T16:00:00.000Z"],
  ])("%s", (_, day, time, instant) => {
    expect(new Date(instantAt(ZONE, day, time)).toISOString()).toBe(instant);
  });
});
