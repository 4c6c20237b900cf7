import { describe, expect, it } from "vitest";
import type { Ball } from "#contract/records/ball";
import type { Bowler } from "#contract/records/bowler";
import type { House, Pattern } from "#contract/records/place";
import { readingLine } from "#drawing/readingLine";
import { HOOK_WORDS, SPEED_WORDS } from "#engine/delivery/words";
import type { SideId } from "#engine/surface/padWork/sides";
import { jobOfTicket, unknownOf } from "../../src/web/jobFile/jobOfTicket.ts";
import { type Comparison, mostIn, readingsOf, sheenRow, testerRows } from "../../src/web/measured/entries.ts";
import { judgedBySheen, judgedByTester } from "../../src/web/measured/judged.ts";
import { judgedText } from "../../src/web/measured/judgedText.ts";
import { lastGo, lastTaken, type Read, readingsNow } from "../../src/web/measured/readings.ts";
import type { ReadingHere } from "../../src/web/shop/readingsHere.ts";

const BENCH = { cover: "solid", diameterIn: 8.55, wanted: "", lastAbrasive: "pad-2000" } as const;
const MICROINCH_UM = 0.0254;
const tester =
  (read: Readonly<Partial<Record<SideId, readonly number[]>>>) =>
  (side: SideId): Read | null => {
    const figures = read[side];
    return figures === undefined ? null : { um: figures.map((figure) => figure * MICROINCH_UM), comparison: null };
  };
const sheen =
  (seen: Readonly<Partial<Record<SideId, Comparison>>>) =>
  (side: SideId): Read | null => {
    const comparison = seen[side];
    return comparison === undefined ? null : { um: [], comparison };
  };

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
  const alike = {
    grip: [20, 21, 20],
    opposite: [21, 20, 20],
    left: [20, 20, 21],
    right: [20, 21, 21],
    fingers: [20, 20, 20],
    thumb: [21, 21, 20],
  };
  const said = (read: Parameters<typeof tester>[0], wanted = "") => judgedText(judgedByTester(tester(read), { ...BENCH, wanted }));

  it("cannot be said of fewer than two sides, and it says how many more", () => {
    expect(said({})).toBe("Two more sides and I can tell.");
    expect(said({ grip: [20, 21] })).toBe("One more side and I can tell.");
  });

  it("six sides read alike are even; without a finish they match each other", () => {
    expect(said(alike)).toBe("All six match each other.");
  });

  it("one that is twice as rough is named, and the rest by its number", () => {
    const off = judgedByTester(tester({ ...alike, left: [40, 41, 40] }), BENCH);
    expect(off.off.map(({ side, way }) => [side, way])).toEqual([["left", "tooDull"]]);
    expect(judgedText(off)).toBe("Left is duller. The other five match each other.");
  });

  it("against a finish the way is said too, and how long the last pad takes to put it right", () => {
    // What the law reads for 2000 is about 12 µin; a side a third smoother than the rest has lost a step of the ladder (common practice: 1.5).
    const twelve = { grip: [12.8, 12.5], left: [13.1, 12.4], right: [12.4, 12.6], fingers: [12, 12.9], thumb: [12.5, 12] };
    const off = judgedByTester(tester({ ...twelve, opposite: [8.1, 9.9] }), { ...BENCH, wanted: "2000" });
    expect(judgedText(off)).toBe("Opposite is too smooth. The other five match 2000.");
    expect(off.off[0].moreSeconds).toBeGreaterThanOrEqual(5);
    expect(said({ ...twelve, opposite: [12.3, 12.2] }, "2000")).toBe("All six match 2000.");
    expect(said({ ...twelve, opposite: [12.3, 12.2] }, "500")).toBe("All six are too smooth for 500.");
  });

  it("where none meets the finish, the one that stands apart is named all the same, and comes first for the work", () => {
    const five = { grip: [13.1, 12.9], left: [13, 12.8], right: [13.2, 13], fingers: [12.9, 13.1], thumb: [13, 13.2] };
    const dull = judgedByTester(tester({ ...five, opposite: [40, 41] }), { ...BENCH, wanted: "3000" });
    expect(judgedText(dull)).toBe("Opposite is too dull. The other five match each other, but are too dull for 3000.");
    expect(dull.off.map(({ side }) => side)).toEqual(["opposite"]);
    expect(said({ ...five, opposite: [6, 6.1] }, "1000")).toBe(
      "Opposite is too smooth. The other five match each other, but are too smooth for 1000.",
    );
    // Off the other way than the rest it is odd as well; nearer to the finish than the rest it is not the one to be named.
    expect(said({ ...five, opposite: [40, 41] }, "1000")).toBe(
      "Opposite is too dull. The other five match each other, but are too smooth for 1000.",
    );
    expect(said({ ...five, opposite: [17, 17.2] }, "500")).toBe("All six are too smooth for 500.");
  });

  it("it counts no side that was not read", () => {
    expect(said({ grip: [12.5, 12.4], left: [12.6, 12.5], right: [12.4, 12.4] }, "500")).toBe(
      "The three read so far are too smooth for 500.",
    );
  });

  it("one reading a side that is off is not sworn to", () => {
    const once = { grip: [12.8], left: [13.1], right: [12.4], fingers: [12], thumb: [12.5], opposite: [8.8] };
    const judged = judgedByTester(tester(once), { ...BENCH, wanted: "2000" });
    expect(judged.isSure).toBe(false);
    expect(judgedText(judged)).toContain("Opposite looks too smooth.");
  });
});

describe("whether sides look alike", () => {
  const seen = sheen({ grip: "the same", opposite: "the same", left: "duller" });

  it("are held against the reference only where it has the finish that was wanted", () => {
    expect(judgedText(judgedBySheen(seen, "2000"))).toBe("Left is too dull. The other two match 2000.");
    expect(judgedText(judgedBySheen(seen, null))).toBe("Left is duller. The other two match each other.");
  });

  it("all alike but unlike the reference match each other, yet not the finish", () => {
    const duller = sheen({ grip: "duller", left: "duller", right: "duller" });
    expect(judgedBySheen(duller, null).kind).toBe("match");
    expect(judgedText(judgedBySheen(duller, "2000"))).toBe("The three read so far are too dull for 2000.");
  });

  it("are named only by how they were seen", () => {
    const looks = ["duller", "the same", "smoother", "duller", "the same", "smoother"] as const;
    const [grip, left, right, fingers, thumb, opposite] = looks;
    const mixed = judgedText(judgedBySheen(sheen({ grip, left, right, fingers, thumb, opposite }), null));
    expect(mixed).toBe("Grip and fingers are duller. Right and opposite are smoother. The other two match each other.");
    const four = sheen({ grip, left: "duller", right: "duller", fingers, thumb, opposite });
    expect(judgedText(judgedBySheen(four, null))).toBe(
      "Thumb is like the reference ball. Opposite is smoother. The other four are duller than the reference ball.",
    );
    const none = sheen({ grip, left: "duller", right: "duller", opposite });
    expect(judgedText(judgedBySheen(none, "2000"))).toBe(
      "Opposite is too smooth. The other three match each other, but are too dull for 2000.",
    );
  });

  it("know no seconds: an eye has no figure", () => {
    expect(judgedBySheen(seen, "2000").off[0].moreSeconds).toBeNull();
  });
});

describe("the readings on one line", () => {
  it("name what is off, and never one name over another", () => {
    const line = (values: readonly number[]) => {
      const points = values.map((value, i) => ({ name: `side${i}`, value, isOff: true }));
      const svg = readingLine({ points, wanted: { name: "500", value: 30 }, unit: "µin" }, 360);
      const texts = [...svg.matchAll(/<text ([^>]*)>side\d/g)].map(([, attributes]) => attributes);
      return texts.map((attributes) => ["x", "y"].map((name) => Number(new RegExp(` ?\\b${name}="([^"]+)"`).exec(attributes)?.[1])));
    };
    const named = line([12.8, 12.9, 13, 13.1, 13.2, 20]);
    expect(named.length).toBeGreaterThanOrEqual(2);
    for (const [i, [x, y]] of named.entries())
      for (const [otherX, otherY] of named.slice(i + 1)) expect(y !== otherY || Math.abs(x - otherX) > 60).toBe(true);
  });
});

describe("readings of the surface that is there", () => {
  const at = (minute: number) => `2026-03-01T10:${String(minute).padStart(2, "0")}:00.000Z`;
  const one = (place: string, minute: number): ReadingHere => ({
    id: `${place} ${minute}`,
    ballId: "b",
    ticketId: "t",
    at: at(minute),
    when: "after",
    place,
    how: "tester",
    raUm: 0.3,
    comparison: null,
    takesBack: null,
    createdAt: at(minute),
  });
  const asked = { when: "after", ticketId: "t", from: "", how: "tester", work: null } as const;

  it("of a side that was put back to be worked again the old reading speaks no more; of the others it does", () => {
    const all = [one("grip", 1), one("opposite", 2), one("opposite", 9)];
    const now = readingsNow(all, { ...asked, again: [{ at: at(5), sides: ["opposite"] }] });
    expect(now.map(({ id }) => id)).toEqual(["grip 1", "opposite 9"]);
  });

  it("what was taken last, and how, is what the room opens with; another ticket's says nothing of this one", () => {
    const eye = { ...one("left", 4), how: "reference ball" as const };
    const hard = { ...one("grip", 8), how: "durometer" as const };
    const all = [{ ...one("thumb", 9), ticketId: "other" }, one("grip", 5), eye, hard];
    expect(lastTaken(all, "t", "")?.id).toBe("grip 5");
    expect(lastTaken(all, "none", "")).toBeNull();
    expect(lastTaken([{ ...eye, ticketId: null }], null, at(5))).toBeNull();
  });

  it("undo takes back what was written down last in one go, all of it and nothing else", () => {
    const two = [one("left", 4), { ...one("left", 4), id: "left 4b" }];
    expect(lastGo([one("grip", 1), ...two]).map(({ id }) => id)).toEqual(["left 4", "left 4b"]);
    expect(lastGo([])).toEqual([]);
  });
});

describe("writing down", () => {
  const belongs = { ballId: "b", ticketId: null, when: "after", at: "2026-03-01T10:00:00.000Z", place: "track" } as const;

  it("each figure of a place is a reading of its own, in the track as on a side", () => {
    expect(testerRows([0.5, 0.6], belongs).map(({ raUm, place, how }) => [raUm, place, how])).toEqual([
      [0.5, "track", "tester"],
      [0.6, "track", "tester"],
    ]);
  });

  it("by sheen keeps no figure", () => {
    const row = sheenRow("smoother", "r", belongs);
    expect(row).toMatchObject({ comparison: "smoother", referenceBallId: "r", how: "reference ball" });
    expect(row).not.toHaveProperty("raUm");
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
