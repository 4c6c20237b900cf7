import { describe, expect, test } from "vitest";
import { ballGlobe } from "#drawing/ballGlobe";
import { fromDisc, onDisc } from "#drawing/globeHalf";
import type { SpinnerStage } from "#engine/surface/padWork/padStage";
import { PLAIN_QUESTION, padWorkOf } from "#engine/surface/padWork/padWork";
import { SIDE_AXES, SIDE_SETS, type SideCount } from "#engine/surface/padWork/sides";
import type { Vector } from "#engine/vector";
import { expectPicture, textsOf } from "./snapshot.ts";

function given(count: SideCount) {
  const stage: SpinnerStage = {
    by: "spinner",
    grainUm: 18.3,
    padDiameterIn: 4,
    spinnerRpm: 400,
    sweepDeg: [5, 80],
    sides: SIDE_SETS[count].map((side) => ({ side, seconds: 30, force: "medium", held: null })),
  };
  return { name: "Tideline", work: padWorkOf({ ...PLAIN_QUESTION, cells: 1500, stages: [stage] }), axes: SIDE_AXES };
}

describe("the ball in two halves", () => {
  test("equal areas are drawn equal: a cap of 60° is half of a half, so its rim lies at √½ (Lambert 1772)", () => {
    const [x, y] = onDisc([Math.sin(Math.PI / 3), 0, Math.cos(Math.PI / 3)], "grip") ?? [Number.NaN, Number.NaN];
    expect(Math.hypot(x, y)).toBeCloseTo(Math.SQRT1_2, 12);
  });

  test.each(["grip", "opposite"] as const)("every point of the %s disc is the direction it stands for", (half) => {
    for (const point of [
      [0, 0],
      [0.3, -0.5],
      [-0.8, 0.1],
      [0, 1],
    ] as const) {
      const [x, y] = onDisc(fromDisc(point, half), half) ?? [Number.NaN, Number.NaN];
      expect(x).toBeCloseTo(point[0], 9);
      expect(y).toBeCloseTo(point[1], 9);
    }
  });

  test("left is on the left of the grip and, seen from behind, on the right", () => {
    const left: Vector = SIDE_AXES.left;
    expect(onDisc(left, "grip")?.[0]).toBeCloseTo(-1, 12);
    expect(onDisc(left, "opposite")?.[0]).toBeCloseTo(1, 12);
  });

  test("says which sides were not worked, and for how long the others were", () => {
    const texts = textsOf(ballGlobe(given(2)));
    expect(texts).toEqual(expect.arrayContaining(["grip 30 s", "opposite 30 s", "fingers, not worked"]));
  });

  test("grains follow the work: as dense as the whole where the work is even", () => {
    const drawn = (count: SideCount) =>
      (/class="gw-half"[\s\S]*?d="((?:M[^h]*h0)+)"/.exec(ballGlobe(given(count)))?.[1] ?? "").split("M").length - 1;
    expect(drawn(6) / 750).toBeCloseTo(1 / 1.8, 1);
  });

  test.each(["lying", "upright"] as const)("looks as approved, %s", async (layout) => {
    await expectPicture(ballGlobe(given(4), { layout }), `globe-${layout}`);
  });
});
