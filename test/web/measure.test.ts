import { describe, expect, it } from "vitest";
import type { Ball } from "#contract/records/ball";
import type { Bowler } from "#contract/records/bowler";
import type { House, Pattern } from "#contract/records/place";
import { HOOK_WORDS, SPEED_WORDS } from "#engine/delivery/words";
import {
  afterKeeping,
  emptyReadings,
  mostIn,
  type ReadingsDraft,
  readingsOf,
  readingsToKeep,
  sheenVerdict,
  sidesVerdict,
} from "../../src/web/rooms/measure/entries.ts";
import { jobOfTicket, unknownOf } from "../../src/web/rooms/plan/jobOfTicket.ts";

const BENCH = { unit: "µin", cover: "solid", diameterIn: 8.55, wanted: "", lastAbrasive: "pad-2000" } as const;
const BELONGS = { ballId: "b", ticketId: null, referenceBallId: "r", unit: "µin", at: "2026-03-01T10:00:00.000Z" } as const;
const draft = (part: Partial<ReadingsDraft>): ReadingsDraft => ({ ...emptyReadings("key", "after", "tester"), ...part });

describe("readings as typed", () => {
  it("are in µm, whatever the shop's unit (1 in is 25.4 mm by definition)", () => {
    expect(readingsOf("10", "µin")?.[0]).toBeCloseTo(0.254, 12);
    expect(readingsOf("0,25 .3", "µm")).toEqual([0.25, 0.3]);
    expect(mostIn("µm")).toBeCloseTo(25.4, 12);
  });

  it.each(["0", "-3", "1e3", "20 about", "1001", "Infinity", "2O"])("%j is no reading", (typed) => {
    expect(readingsOf(typed, "µin")).toBeNull();
  });

  it("nothing typed is no fault", () => {
    expect(readingsOf("  ", "µin")).toEqual([]);
  });
});

describe("whether measured sides agree", () => {
  it("cannot be said of one side", () => {
    expect(sidesVerdict({ grip: "20 21" }, BENCH)).toBeNull();
  });

  it("six sides read alike, three times each, are even; one that is twice as rough is named", () => {
    const alike = { grip: "20 21 20", opposite: "21 20 20", left: "20 20 21", right: "20 21 21", fingers: "20 20 20", thumb: "21 21 20" };
    expect(sidesVerdict(alike, BENCH)?.verdict.verdict).toBe("even");
    const off = sidesVerdict({ ...alike, left: "40 41 40" }, BENCH);
    expect(off?.verdict.verdict).toBe("uneven");
    expect(off?.verdict.backTo).toBe("left");
  });

  it("are compared with each other where there is no finish to compare with", () => {
    expect(sidesVerdict({ grip: "20", left: "20" }, BENCH)?.targetUm).toBeNull();
    expect(sidesVerdict({ grip: "20", left: "20" }, { ...BENCH, wanted: "2000" })?.targetUm).toBeGreaterThan(0);
  });
});

describe("whether sides look alike", () => {
  const sheen = { grip: "the same", opposite: "the same", left: "duller" } as const;

  it("names those to go back to only where the reference is what was wanted", () => {
    expect(sheenVerdict(sheen, true)?.backTo).toEqual(["left"]);
    expect(sheenVerdict(sheen, false)?.backTo).toEqual([]);
    expect(sheenVerdict(sheen, true)?.notLooked).toEqual(["right", "fingers", "thumb"]);
  });

  it("cannot be said of one side", () => {
    expect(sheenVerdict({ grip: "duller" }, true)).toBeNull();
  });
});

describe("keeping", () => {
  it("gives every reading a key of its own, and leaves in the form what is no reading", () => {
    const typed = draft({ typed: { grip: "20 21", left: "x", thumb: "30" }, sheen: { grip: "duller" } });
    const readings = readingsToKeep(typed, BELONGS);
    expect(new Set(readings.map(({ key }) => key)).size).toBe(3);
    expect(readings.map(({ body }) => body.place)).toEqual(["grip", "grip", "thumb"]);
    const after = afterKeeping(typed, "µin", "next");
    expect(after).toMatchObject({ key: "next", typed: { left: "x" }, sheen: { grip: "duller" } });
    expect(readingsToKeep(after, BELONGS)).toEqual([]);
  });

  it("by sheen keeps no figure", () => {
    const [one] = readingsToKeep(draft({ how: "reference ball", sheen: { left: "smoother" }, typed: { left: "20" } }), BELONGS);
    expect(one.body).toMatchObject({ place: "left", comparison: "smoother", referenceBallId: "r", how: "reference ball" });
    expect(one.body).not.toHaveProperty("raUm");
  });
});

describe("the job of a ticket", () => {
  const ball = { name: "Grey Heron", cover: "pearl", job: null, core: null, layout: null, boxFinish: null, surface: [] } as unknown as Ball;
  const bowler = (deliveries: readonly object[]) =>
    ({ name: "Ola Fennimore", hand: "left", spread: null, deliveries }) as unknown as Bowler;
  const NUMBERS = { speedMph: null, revRateRpm: null, axisRotationDeg: null, axisTiltDeg: null };
  const early = { at: "2025-01-01T00:00:00.000Z", ...NUMBERS, speed: "slow", hook: "little" };
  const late = { at: "2026-01-01T00:00:00.000Z", ...NUMBERS, speed: "fast", hook: "much" };

  it("leaves out what nobody knows, and says what that is", () => {
    const job = jobOfTicket(ball, null);
    expect(job.ball).toEqual({ name: "Grey Heron", cover: "pearl" });
    expect(job.bowler).toEqual({});
    expect(unknownOf(ball, null)).toEqual(["delivery", "finish", "core"]);
    expect(jobOfTicket({ ...ball, cover: null }, null).ball).toEqual({ name: "Grey Heron" });
    expect(unknownOf({ ...ball, cover: null }, null)).toContain("cover");
  });

  it("takes the newest delivery, whatever the order in which they are kept", () => {
    expect(jobOfTicket(ball, bowler([late, early])).bowler).toEqual({ name: "Ola Fennimore", hand: "left", speed: "fast", hook: "much" });
  });

  it("a word said across the counter later on counts for its own part, and leaves what was measured of the other", () => {
    const measured = { ...early, speed: null, hook: null, speedMph: 16.4, revRateRpm: 377, axisRotationDeg: 50, axisTiltDeg: 12 };
    const told = { ...late, hook: null };
    expect(jobOfTicket(ball, bowler([measured, told])).bowler).toMatchObject({
      ...SPEED_WORDS.fast,
      revRateRpm: 377,
      axisRotationDeg: 50,
      axisTiltDeg: 12,
    });
  });

  it("is planned on the pattern that it is wanted for", () => {
    const pattern = { oil: { pattern: "heavy-44" } } as unknown as Pattern;
    expect(jobOfTicket(ball, null, { pattern, house: null }).lane).toEqual({ pattern: "heavy-44" });
    const taught = { shots: 40, ids: ["house.dry"], draws: [[1.1]] };
    const house = { taught: { house: taught } } as unknown as House;
    expect(jobOfTicket(ball, null, { pattern: null, house })).toMatchObject({ house: taught });
  });

  it("a measured number wins over a word; the word stands for the numbers that are missing", () => {
    const { bowler: planned } = jobOfTicket(ball, bowler([{ ...late, speedMph: 18.25 }]));
    expect(planned).toEqual({ name: "Ola Fennimore", hand: "left", speedMph: 18.25, ...HOOK_WORDS.much });
    const turned = jobOfTicket(ball, bowler([{ ...late, revRateRpm: 377 }])).bowler;
    expect(turned).toMatchObject({ ...SPEED_WORDS.fast, revRateRpm: 377 });
    expect(turned).not.toHaveProperty("hook");
  });
});
