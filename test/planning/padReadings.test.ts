import { describe, expect, it } from "vitest";
import { assume } from "#engine/assumptions";
import { worldsOf } from "#engine/planning/comparison";
import { assumedIn } from "#engine/planning/ground";
import { fitOfReadings, type PadReading } from "#engine/planning/padReadings";
import { decide, rate, scoreWorlds, wantedOf } from "#engine/planning/steps";
import { worldsAsked } from "#engine/planning/worldsAsked";
import { effectiveRaUm, parseFinish, readingOfEffectiveRa } from "#engine/surface/finish";
import { weightedMean } from "#engine/worlds/weightedMean";
import { asked } from "./questions.ts";

/** What a tester reads on balls of a shop whose pads leave so many times the table's roughness. */
const readIn = (scale: number, finishes: readonly string[]): readonly PadReading[] =>
  finishes.map((text) => {
    const finish = parseFinish(text);
    return { finish, raMicroinch: scale * readingOfEffectiveRa(effectiveRaUm(finish), assume()) };
  });

describe("readings of balls fresh from the bench", () => {
  it("weigh as the normal law with own and shared error does: two readings, by hand", () => {
    const [first, second] = readIn(1, ["1000", "2000"]);
    const readings = [
      { ...first, raMicroinch: first.raMicroinch * Math.exp(0.3) },
      { ...second, raMicroinch: second.raMicroinch * Math.exp(-0.1) },
    ];
    // Covariance .0225 + .0036 on the diagonal, .0036 beside it: inverse of the 2 × 2 matrix.
    const [a, b] = [0.0261, 0.0036];
    const square = (a * (0.3 ** 2 + 0.1 ** 2) - 2 * b * 0.3 * -0.1) / (a * a - b * b);
    expect(fitOfReadings(readings, assume())).toBeCloseTo(-0.5 * square, 9);
    expect(fitOfReadings([], assume())).toBe(0);
  });

  const question = (scale: number) => asked("matched", "solid", "medium-41", { readings: readIn(scale, ["500", "1000", "2000", "3000"]) });

  it.each([0.8, 1, 1.25])("bring the worlds' own pads to the shop's: %f of the table's", (scale) => {
    const seen = question(scale);
    const { own } = worldsAsked(seen);
    const scales = own.map((world) => assumedIn(world, seen)["roughness.scale"]);
    const weights = own.map((world, i) => world.weight * Math.exp(fitOfReadings(seen.readings, assumedIn(own[i], seen))));
    const mean = weightedMean(scales, weights);
    const sd = Math.sqrt(
      weightedMean(
        scales.map((one) => (one - mean) ** 2),
        weights,
      ),
    );
    // Four balls at 15 in 100 and a shared 6 know the scale to √(.15²/4 + .06²) = .096 of itself.
    expect(Math.abs(mean - scale)).toBeLessThan(2 * 0.096 * scale);
    expect(sd).toBeLessThan(0.13 * scale);
    const before = own.map(({ weight }) => weight);
    const wide = weightedMean(scales, before);
    expect(
      Math.sqrt(
        weightedMean(
          scales.map((one) => (one - wide) ** 2),
          before,
        ),
      ),
    ).toBeGreaterThan(1.2 * sd);
  });

  it("reach the plan: its worlds, what it says, and what it says where no world reads so", () => {
    const planOf = (scale: number) => {
      const own = { ...question(scale), candidates: [parseFinish("1000"), parseFinish("3000")] };
      const wanted = wantedOf(own);
      const block = scoreWorlds(own, wanted, "fresh", 0, 48);
      const ratings = wanted.finishes.map((finish) => rate(own, finish, { ...wanted, span: "fresh" }));
      return { weights: worldsOf([block]).weights, plan: decide(own, wanted, ratings, [block]) };
    };
    const usual = planOf(1);
    expect(new Set(usual.weights.map((weight) => weight.toFixed(12))).size).toBeGreaterThan(10);
    expect(usual.plan.messages).toContainEqual({ id: "message.padReadings", params: { readings: 4 } });
    // Readings in micrometres, typed as microinches, would be forty times too small.
    const wrong = planOf(1 / 40);
    expect(wrong.plan.messages.map(({ id }) => id)).toContain("message.readingsUnsaid");
    expect(wrong.plan.pick?.sureShare ?? 0).toBeLessThanOrEqual(0.5);
  });
});
