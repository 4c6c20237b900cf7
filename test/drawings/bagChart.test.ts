import { describe, expect, test } from "vitest";
import { bagChart } from "#drawing/bagChart";
import type { BagBallPlan, BagStage } from "#engine/planning/bag/bagPlan";
import { elementsOf, expectPicture, textsOf } from "./snapshot.ts";

const ball = (name: string, finish: string, hookStartFt: number, entryAngleDeg: number, over: Partial<BagBallPlan> = {}): BagBallPlan => ({
  name,
  cover: "solid",
  today: finish,
  finish,
  asItLies: true,
  minutes: 0,
  byHand: null,
  role: "notNeeded",
  stages: 0,
  lostWithout: null,
  atFirst: { hookStartFt, entryAngleDeg, chance: 0.4 },
  atLast: { hookStartFt: hookStartFt - 3, entryAngleDeg: entryAngleDeg - 0.5, chance: 0.3 },
  ...over,
});
const stage = (game: number, part: number, name: string, finish: string): BagStage => ({
  game,
  part,
  ball: name,
  finish,
  asItLies: true,
  line: null,
  hookStartFt: null,
  entryAngleDeg: null,
  chance: { value: 0.4, low: 0.3, high: 0.5 },
  oilMl: 20,
});
const PLAN = {
  balls: [
    ball("Breakwater", "500", 36, 4, { role: "thrown" }),
    ball("Ebb", "4000 + polish", 42, 5, { role: "thrown" }),
    ball("Jetty", "2000", 0, 0, { role: "aside", atFirst: null, atLast: null }),
  ],
  stages: [
    stage(1, 1, "Breakwater", "500"),
    stage(1, 2, "Breakwater", "500"),
    stage(2, 1, "Ebb", "4000 + polish"),
    stage(2, 2, "Ebb", "4000 + polish"),
  ],
};

describe("the bag", () => {
  test("a ball that hooks later lies further right, one that enters steeper higher; one without a place is not drawn", () => {
    const svg = bagChart(PLAN);
    const rings = elementsOf(svg, "circle").filter(({ r }) => Math.abs(Number(r) - 15 / 2.6) < 0.01);
    expect(rings).toHaveLength(2);
    const [early, late] = rings;
    expect(Number(late.cx)).toBeGreaterThan(Number(early.cx));
    expect(Number(late.cy)).toBeLessThan(Number(early.cy));
    expect(textsOf(svg).some((words) => words.startsWith("Jetty"))).toBe(false);
  });

  test("the session is a log: one stretch a ball, each as long as its stages", () => {
    const stretches = elementsOf(bagChart(PLAN), "rect").filter(({ height }) => height === "34");
    expect(stretches).toHaveLength(2);
    expect(stretches[0].width).toBe(stretches[1].width);
    expect(textsOf(bagChart(PLAN))).toEqual(expect.arrayContaining(["game 1", "game 2", "Ebb"]));
  });

  test("nothing to show is an empty chart, not a fault", () => {
    expect(bagChart({ balls: [], stages: [] })).toContain("<svg");
  });

  test.each(["lying", "upright"] as const)("looks as approved, %s", async (layout) => {
    await expectPicture(bagChart(PLAN, { layout }), `bag-${layout}`);
  });
});
