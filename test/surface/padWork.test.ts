import { describe, expect, it } from "vitest";
import { flatSpotOf } from "#engine/surface/padWork/flatSpot";
import type { HandStage, PadStage, SideWork, SpinnerStage } from "#engine/surface/padWork/padStage";
import { PLAIN_QUESTION, padWorkOf } from "#engine/surface/padWork/padWork";
import { nothingReceived } from "#engine/surface/padWork/received";
import { SIDE_SETS, type SideCount } from "#engine/surface/padWork/sides";

const onSides = (count: SideCount): SideWork[] => SIDE_SETS[count].map((side) => ({ side, seconds: 30, force: "medium", held: null }));
const spinner = (more: Partial<SpinnerStage> = {}): SpinnerStage => ({
  by: "spinner",
  grainUm: 30.2,
  padDiameterIn: 4,
  spinnerRpm: 400,
  sweepDeg: [5, 80],
  sides: onSides(6),
  ...more,
});
const hand: HandStage = { by: "hand", grainUm: 30.2, padDiameterIn: 3, strokeSpeed: 0.5, strokeDeg: 45, patchDeg: 40, sides: onSides(6) };
const work = (...stages: PadStage[]) => padWorkOf({ ...PLAIN_QUESTION, cells: 2000, stages });

describe("sides (common practice: all six, the same time each)", () => {
  it.each([
    [4, [5, 80]],
    [4, [0, 90]],
    [3, [5, 80]],
    [4, [5, 60]],
    [3, [20, 70]],
  ] as const)("a pad %d in wide swept %j: six are more even than four, four than two, and cross better", (padDiameterIn, sweepDeg) => {
    const [two, four, six] = work(spinner({ padDiameterIn, sweepDeg })).compared.map(({ evenness }) => evenness);
    expect(six.cv).toBeLessThan(four.cv);
    expect(four.cv).toBeLessThan(two.cv);
    expect(six.crossing).toBeGreaterThan(four.crossing);
    expect(two.crossing).toBeCloseTo(0, 12);
  });

  it("skipping any one of six is worse, and each brings a sixth", () => {
    const { evenness, sides } = work(spinner());
    for (const { share, without } of sides) {
      expect(without.cv).toBeGreaterThan(1.5 * evenness.cv);
      expect(share).toBeCloseTo(1 / 6, 3);
    }
  });

  it("of two sides the middles are the thin spots, where the surface hardly moves under the pad", () => {
    const { thin } = work(spinner({ sides: onSides(2) }));
    expect(thin.slice(0, 2).map(({ side }) => side)).toEqual(expect.arrayContaining(["grip", "opposite"]));
    for (const { awayDeg } of thin.slice(0, 2)) expect(awayDeg).toBeLessThan(10);
  });
});

describe("work", () => {
  it("adds up over stages: the same stage twice is twice the work and as even", () => {
    const [once, twice] = [work(spinner()), work(spinner(), spinner())];
    expect(twice.received.work[17]).toBeCloseTo(2 * once.received.work[17], 6);
    expect(twice.evenness.cv).toBeCloseTo(once.evenness.cv, 12);
    expect(twice.flat.outOfRoundUm).toBeCloseTo(2 * once.flat.outOfRoundUm, 9);
  });

  it("by hand: all of F v t lies on the ball, whatever the strokes", () => {
    const { received } = padWorkOf({ ...PLAIN_QUESTION, cells: 6000, stages: [hand] });
    const area = 4 * Math.PI * ((PLAIN_QUESTION.diameterIn / 2) * 0.0254) ** 2;
    const joule = (received.work.reduce((sum, one) => sum + one, 0) / received.work.length) * area;
    expect(joule / (20 * 0.5 * 180)).toBeCloseTo(1, 2);
  });

  it("by hand: the same seed gives the same ball, another seed another", () => {
    const cv = (seed: number) => padWorkOf({ ...PLAIN_QUESTION, cells: 1000, seed, stages: [hand] }).evenness.cv;
    expect(cv(3)).toBe(cv(3));
    expect(cv(3)).not.toBe(cv(4));
  });

  it("nothing done is nothing uneven, and no figure is lost", () => {
    const { evenness, flat } = work(spinner({ sides: [{ side: "grip", seconds: 0, force: "light", held: null }] }));
    expect(evenness).toEqual({ cv: 0, least: 0, most: 0, underHalf: 1, crossing: 0 });
    expect(flat.timesToAllowed).toBeNull();
  });
});

describe("out of round", () => {
  it("the same depth all over costs diameter, not roundness", () => {
    const received = nothingReceived(1000);
    received.depthUm.fill(40);
    expect(flatSpotOf(received)).toMatchObject({ deepestUm: 40, outOfRoundUm: 0, timesToAllowed: null });
  });

  it("254 µm off one spot is all that is allowed (0.010 in, from memory)", () => {
    const received = nothingReceived(1000);
    received.depthUm[3] = 254;
    expect(flatSpotOf(received).ofAllowed).toBeCloseTo(1, 12);
  });

  it("dwelling at one angle cuts deeper than sweeping for the same time", () => {
    const held = (seconds: number, atDeg: number): SideWork[] => [{ side: "grip", seconds: 30, force: "hard", held: { atDeg, seconds } }];
    const swept: SideWork[] = [{ side: "grip", seconds: 90, force: "hard", held: null }];
    expect(work(spinner({ sides: held(60, 60) })).flat.outOfRoundUm).toBeGreaterThan(
      1.3 * work(spinner({ sides: swept })).flat.outOfRoundUm,
    );
  });
});
