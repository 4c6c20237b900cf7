import { describe, expect, it } from "vitest";
import { EngineFault } from "#engine/fault";
import { heldShare, outcomeReport, type PlanOutcome } from "#engine/learning/outcomes";
import { uniformSource } from "#engine/random";

describe("a share with its interval", () => {
  it.each([
    [81, 263, 0.2552885, 0.3662096],
    [15, 148, 0.0623864, 0.1604872],
    [0, 20, 0, 0.1611252],
    [1, 29, 0.0061132, 0.1717552],
  ])("%i of %i: Wilson's 95 %% is %f to %f (Newcombe 1998, from memory; recomputed)", (held, of, low, high) => {
    expect(heldShare(held, of).low).toBeCloseTo(low, 6);
    expect(heldShare(held, of).high).toBeCloseTo(high, 6);
  });

  it("of none nothing is known; more than all is refused", () => {
    expect(heldShare(0, 0)).toEqual({ held: 0, of: 0, share: 0, low: 0, high: 1 });
    expect(() => heldShare(3, 2)).toThrow(EngineFault);
  });
});

describe("which plans held", () => {
  const one = (over: Partial<PlanOutcome>): PlanOutcome => ({
    outcome: "as said",
    cover: "solid",
    symptoms: ["hooksLess"],
    sureShare: 0.95,
    ...over,
  });

  it("by cover and by complaint; partly counts half", () => {
    const report = outcomeReport([one({}), one({ outcome: "not" }), one({ outcome: "partly", cover: "pearl", symptoms: [] })]);
    expect(report.all).toMatchObject({ held: 1.5, of: 3 });
    expect(report.byCover.map(({ cover, held }) => [cover, held.held, held.of])).toEqual([
      ["solid", 1, 2],
      ["pearl", 0.5, 1],
    ]);
    expect(report.bySymptom).toHaveLength(1);
  });

  it("odds that are kept agree, odds that are too bold do not (300 plans each, seed 2)", () => {
    const uniform = uniformSource(2);
    const plans = (said: number, really: number) =>
      Array.from({ length: 300 }, () => one({ sureShare: said, outcome: uniform() < really ? "as said" : "not" }));
    const [kept] = outcomeReport(plans(0.8, 0.8)).calibration;
    expect(kept.agrees).toBe(true);
    const [bold] = outcomeReport(plans(0.95, 0.6)).calibration;
    expect(bold.agrees).toBe(false);
    expect(bold.held.high).toBeLessThan(0.95);
    expect(outcomeReport(plans(0.95, 0.6)).brier).toBeGreaterThan(outcomeReport(plans(0.6, 0.6)).brier ?? 1);
  });

  it("without odds there is nothing to calibrate", () => {
    expect(outcomeReport([one({ sureShare: null })])).toMatchObject({ calibration: [], brier: null });
  });
});
