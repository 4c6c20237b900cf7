import { describe, expect, it } from "vitest";
import { evenPoints, normalDeviate } from "#engine/random";
import { evenness } from "#engine/surface/readings/evenness";
import { gaussianMeanLine } from "#engine/surface/roughness/gaussian";
import { measureRoughness } from "#engine/surface/roughness/measure";

/** The filter at every point, as the standard writes it: no blocks, the whole kernel to 6 standard deviations. */
function direct(um: Float64Array, spacingMm: number, cutoffMm: number): Float64Array {
  const alpha = Math.sqrt(Math.LN2 / Math.PI);
  const reach = Math.ceil((1.15 * cutoffMm) / spacingMm);
  return um.map((_, i) => {
    let sum = 0;
    let total = 0;
    for (let j = Math.max(0, i - reach); j <= Math.min(um.length - 1, i + reach); j++) {
      if (Number.isNaN(um[j])) continue;
      const weight = Math.exp(-Math.PI * (((i - j) * spacingMm) / (alpha * cutoffMm)) ** 2);
      sum += weight * um[j];
      total += weight;
    }
    return sum / total;
  });
}

const noise = (count: number) => Float64Array.from(evenPoints(count, 1, 11), (p) => normalDeviate(p));

describe("Gaussian mean line", () => {
  it.each([
    ["fine spacing, computed in blocks", 0.0005],
    ["coarse spacing, at every point", 0.01],
  ] as const)("agrees with the direct convolution to 5e-4 of the roughness, ends and gaps included: %s", (_name, spacingMm) => {
    const um = noise(6000).map((z, i) => z + 5 * Math.sin(i / 700));
    um.fill(Number.NaN, 2000, 2100);
    const [ours, theirs] = [gaussianMeanLine(um, spacingMm, 0.8), direct(um, spacingMm, 0.8)];
    let worst = 0;
    for (let i = 0; i < um.length; i += 7) worst = Math.max(worst, Math.abs(ours[i] - theirs[i]));
    expect(worst).toBeLessThan(5e-4);
  });

  it("leaves a straight line alone away from the ends", () => {
    const um = Float64Array.from({ length: 4000 }, (_, i) => 0.01 * i);
    const line = gaussianMeanLine(um, 0.001, 0.25);
    for (let i = 600; i < 3400; i += 50) expect(line[i]).toBeCloseTo(um[i], 6);
  });
});

describe("a whole measurement", () => {
  const ball = (heights: Float64Array) => ({ um: heights, spacingMm: 0.001 });

  it("finds the roughness of noise under the ball's own curve, if the arc is taken out", () => {
    const rough = noise(5601);
    const curved = rough.map((z, i) => z - ((i * 0.001 - 2.8) ** 2 * 1000) / (2 * 109));
    const options = { cutoffMm: 0.8, shortCutoffMm: null, form: "arc" } as const;
    const flat = measureRoughness(ball(rough), { ...options, form: "line" });
    expect(measureRoughness(ball(curved), options).raUm).toBeCloseTo(flat.raUm, 3);
    expect(flat.raUm).toBeCloseTo(0.798, 1);
    expect(flat.samplingLengths).toBe(6);
    expect(flat.evaluationMm).toBeCloseTo(4.8, 9);
  });

  it("chooses the cut-off by the table, and says when the profile is too short for it", () => {
    const usual = measureRoughness(ball(noise(5601)), { cutoffMm: null, shortCutoffMm: null, form: "line" });
    expect([usual.cutoffMm, usual.cutoffBy]).toEqual([0.8, "table"]);
    const short = measureRoughness(ball(noise(900)), { cutoffMm: null, shortCutoffMm: null, form: "line" });
    expect([short.cutoffMm, short.cutoffBy]).toEqual([0.25, "length"]);
  });

  it("passes over missing points and counts them; figures that cannot be had are null, never NaN", () => {
    const um = noise(3000);
    um.fill(Number.NaN, 1000, 1200);
    const measured = measureRoughness(ball(um), { cutoffMm: 0.25, shortCutoffMm: null, form: "line" });
    expect(measured.missing).toBe(200);
    const flat = measureRoughness(ball(new Float64Array(3000)), { cutoffMm: 0.25, shortCutoffMm: null, form: "line" });
    for (const figures of [measured, flat]) {
      const { drawn: _drawn, ...rest } = figures;
      expect(
        JSON.stringify(rest, (_key, value) => (typeof value === "number" && !Number.isFinite(value) ? "not finite" : value)),
      ).not.toContain("not finite");
    }
    expect([flat.raUm, flat.rsk, flat.rsmMm, flat.rkUm]).toEqual([0, null, null, null]);
  });

  it("refuses a profile shorter than its cut-off, and one without points", () => {
    expect(() => measureRoughness(ball(noise(1000)), { cutoffMm: 0.8, shortCutoffMm: null, form: "line" })).toThrow(/cutoff/);
    expect(() =>
      measureRoughness(ball(new Float64Array(50).fill(Number.NaN)), { cutoffMm: null, shortCutoffMm: null, form: "line" }),
    ).toThrow(/measured points/);
  });
});

describe("do the sides agree", () => {
  const bench = { grainUm: 10.3, force: "medium", by: "spinner", spinnerRpm: 400, diameterIn: 8.594, hardnessD: 74, ownCut: 1 } as const;
  const scatter = [-0.04, 0.01, 0.03, -0.02, 0.02];
  const side = (name: string, ra: number) => ({ side: name, raUm: scatter.map((s) => ra * Math.exp(s)) });
  const six = (ras: readonly number[]) =>
    evenness(
      ras.map((ra, i) => side(`side ${i + 1}`, ra)),
      0.45,
      bench,
    );

  it("even, when they scatter no more than the readings do", () => {
    const verdict = six([0.45, 0.46, 0.44, 0.45, 0.455, 0.445]);
    expect(verdict.verdict).toBe("even");
    expect(verdict.backTo).toBeNull();
  });

  it("uneven, when one side was cut short; that is the side to go back to, and for some seconds", () => {
    const verdict = six([0.45, 0.46, 0.44, 0.45, 0.455, 0.27]);
    expect(verdict.verdict).toBe("uneven");
    expect(verdict.backTo).toBe("side 6");
    expect(verdict.sides[5].stands).toBe("tooSmooth");
    expect(verdict.sides[5].moreSeconds).toBeGreaterThan(0);
  });

  it("cannot tell from one reading a side that scatters", () => {
    const verdict = evenness(
      [0.34, 0.55, 0.4, 0.5, 0.58, 0.43].map((ra, i) => ({ side: String(i), raUm: [ra] })),
      0.45,
      bench,
    );
    expect(verdict.verdict).toBe("cannotTell");
  });
});
