import { describe, expect, test } from "vitest";
import { band } from "#engine/planning/comparison";
import type { FinishPlan } from "#engine/planning/plan";
import type { WorldBlock } from "#engine/planning/worldScores";
import { lossesOf } from "#tasks/losses";

/** A plan of three finishes whose chances are known, and one without a line. */
const plan = {
  pick: { finish: "2000" },
  candidates: [
    { finish: "1000", chance: { value: 0.46, low: 0.2, high: 0.7 } },
    { finish: "2000", chance: { value: 0.5, low: 0.2, high: 0.7 } },
    { finish: "4000", chance: { value: 0.51, low: 0.2, high: 0.7 } },
    { finish: "4000 + polish", chance: null },
  ],
} as unknown as FinishPlan;

/** A block of worlds in which the finishes have these chances; the shipped worlds' weights are about even. */
const worlds = (from: number, chances: Readonly<Record<string, readonly number[]>>): WorldBlock => ({
  from,
  ids: Object.values(chances)[0].map((_, i) => from + i),
  span: "session",
  finishes: Object.entries(chances).map(([finish, scores]) => ({ finish, scores, onTodaysLine: null })),
  weights: Object.values(chances)[0].map(() => 1),
  priorWeights: Object.values(chances)[0].map(() => 1),
  fits: Object.values(chances)[0].map(() => 0),
  seen: null,
});
const lossOf = (finish: string, drawn: readonly WorldBlock[]) => lossesOf(plan, drawn).find((l) => l.finish === finish)?.lossPer100;

describe("what a finish costs against the pick", () => {
  test("is the difference of the chances in a hundred, nothing for the pick, a gain for a better one, none without a line", () => {
    expect(lossOf("1000", [])?.value).toBeCloseTo(4, 9);
    expect(lossOf("2000", [])).toEqual({ value: 0, low: 0, high: 0 });
    expect(lossOf("4000", [])?.value).toBeCloseTo(-1, 9);
    expect(lossOf("4000 + polish", [])).toBeNull();
  });

  test("worlds that lift every finish alike leave no doubt about the difference, however far the levels range", () => {
    const levels = Array.from({ length: 40 }, (_, i) => 0.2 + i / 80);
    const drawn = [worlds(0, { "1000": levels.map((c) => c - 0.04), "2000": levels })];
    const loss = lossOf("1000", drawn);
    expect(loss?.low).toBeCloseTo(4, 9);
    expect(loss?.high).toBeCloseTo(4, 9);
  });

  test("nine in ten of the differences lie in the band: of 0, 1 … 20 in even shares those from 1 to 19", () => {
    const differences = Array.from({ length: 21 }, (_, i) => i / 100);
    expect(band(differences, 0.1)).toEqual({ low: 0.01, high: 0.19 });
  });

  test("a difference counts by the share of its world", () => {
    expect(band([1, 2, 3], 2, [0.02, 0.96, 0.02])).toEqual({ low: 2, high: 2 });
    expect(band([1, 2, 3], 2, [0.3, 0.4, 0.3])).toEqual({ low: 1, high: 3 });
  });

  test("blocks of worlds are put in order, in whatever order they come", () => {
    const blocks = [worlds(2, { "1000": [0.1, 0.2], "2000": [0.2, 0.3] }), worlds(0, { "1000": [0.7, 0.6], "2000": [0.8, 0.7] })];
    // World by world the pick is 10 in 100 better; paired wrongly it would be 70 better and 50 worse.
    expect(lossOf("1000", blocks)?.high).toBeCloseTo(10, 9);
  });

  test("what is known of the whole session stands in place of the lane as found", () => {
    const fresh = { ...worlds(0, { "1000": [0.1, 0.1], "2000": [0.9, 0.9] }), span: "fresh" as const };
    const whole = worlds(0, { "1000": [0.46, 0.46], "2000": [0.5, 0.5] });
    expect(lossOf("1000", [fresh, whole])?.high).toBeCloseTo(4, 9);
  });
});
