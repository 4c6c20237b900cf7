import { describe, expect, test } from "vitest";
import type { FinishDraws } from "#engine/planning/draws";
import type { FinishPlan } from "#engine/planning/plan";
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

const draws = (finish: string, from: number, chances: readonly number[]): FinishDraws => ({ finish, from, scores: chances });
const lossOf = (finish: string, drawn: readonly FinishDraws[]) => lossesOf(plan, drawn).find((l) => l.finish === finish)?.lossPer100;

describe("what a finish costs against the pick", () => {
  test("is the difference of the chances in a hundred, nothing for the pick, a gain for a better one, none without a line", () => {
    expect(lossOf("1000", [])?.value).toBeCloseTo(4, 9);
    expect(lossOf("2000", [])).toEqual({ value: 0, low: 0, high: 0 });
    expect(lossOf("4000", [])?.value).toBeCloseTo(-1, 9);
    expect(lossOf("4000 + polish", [])).toBeNull();
  });

  test("draws that lift every finish alike leave no doubt about the difference, however far the levels range", () => {
    const levels = Array.from({ length: 40 }, (_, i) => 0.2 + i / 80);
    const drawn = [
      draws(
        "1000",
        0,
        levels.map((c) => c - 0.04),
      ),
      draws("2000", 0, levels),
    ];
    const loss = lossOf("1000", drawn);
    expect(loss?.low).toBeCloseTo(4, 9);
    expect(loss?.high).toBeCloseTo(4, 9);
  });

  test("nine in ten of the differences lie in the band: of 0, 1 … 20 those from 1 to 19", () => {
    const differences = Array.from({ length: 21 }, (_, i) => i / 100);
    const loss = lossOf("1000", [
      draws(
        "1000",
        0,
        differences.map((d) => 0.5 - d),
      ),
      draws(
        "2000",
        0,
        differences.map(() => 0.5),
      ),
    ]);
    expect(loss?.low).toBeCloseTo(1, 9);
    expect(loss?.high).toBeCloseTo(19, 9);
  });

  test("blocks of draws are paired by where they begin, in whatever order they come", () => {
    const blocks = [draws("1000", 2, [0.1, 0.2]), draws("2000", 0, [0.8, 0.7]), draws("1000", 0, [0.7, 0.6]), draws("2000", 2, [0.2, 0.3])];
    // Draw by draw the pick is 10 in 100 better; paired wrongly it would be 70 better and 50 worse.
    expect(lossOf("1000", blocks)?.high).toBeCloseTo(10, 9);
  });
});
