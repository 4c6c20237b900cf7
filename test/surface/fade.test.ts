import { describe, expect, it } from "vitest";
import { assume } from "#engine/assumptions";
import { normalDeviate, uniformSource } from "#engine/random";
import { careOf } from "#engine/surface/care";
import { fadeLaw, fadeLaws, gamesWithin, overLaws, raAfter } from "#engine/surface/fade";
import { effectiveRaUm, parseFinish } from "#engine/surface/finish";

const use = (finish: string, gamesSince = 0) => ({
  cover: "hybrid" as const,
  startUm: effectiveRaUm(parseFinish(finish)),
  gamesSince,
  gamesSinceExtraction: gamesSince,
  gamesSinceResurfacing: gamesSince,
  abrasiveness: 1,
  readings: [],
});

describe("fade", () => {
  it("sanded surfaces shine in the track, polished ones roughen there (common practice)", () => {
    const law = fadeLaw("hybrid", assume());
    const [dull, polished] = [effectiveRaUm(parseFinish("1000")), effectiveRaUm(parseFinish("4000 + polish"))];
    expect(raAfter(law, dull, 30)).toBeLessThan(dull);
    expect(raAfter(law, polished, 30)).toBeGreaterThan(polished);
    expect(raAfter(law, dull, 30, "offTrack")).toBeGreaterThan(raAfter(law, dull, 30));
  });

  it("urethane keeps a dull texture for longer (common practice)", () => {
    const left = (cover: "urethane" | "solid") => raAfter(fadeLaw(cover, assume()), 0.7, 30);
    expect(left("urethane")).toBeGreaterThan(1.3 * left("solid"));
  });

  it("gamesWithin is where the law crosses the bound; never where its level lies inside; 0 outside", () => {
    const law = { levelUm: 0.2, games: 16, offTrack: 5 };
    const games = gamesWithin(law, 0.7, 0.4, 1) ?? Number.NaN;
    expect(raAfter(law, 0.7, games)).toBeCloseTo(0.4, 12);
    expect(gamesWithin(law, 0.7, 0.1, 1)).toBeNull();
    expect(gamesWithin(law, 0.7, 0.8, 1)).toBe(0);
    const up = gamesWithin(law, 0.12, 0.05, 0.15) ?? Number.NaN;
    expect(raAfter(law, 0.12, up)).toBeCloseTo(0.15, 12);
  });

  it("readings move a ball's own curve and narrow it: 40 invented balls, the truth inside the 5–95 % range about nine times in ten", () => {
    const uniform = uniformSource(7);
    const scatter = () => Math.exp(0.15 * normalDeviate(uniform()));
    let inside = 0;
    for (let ball = 0; ball < 40; ball++) {
      const truth = { levelUm: 0.16 + 0.09 * uniform(), games: 9 + 19 * uniform(), offTrack: 5 };
      const readings = [5, 15, 30].map((games) => ({ games, raUm: raAfter(truth, 0.7, games) * scatter(), where: "track" as const }));
      const laws = fadeLaws("hybrid", 0.7, readings, assume());
      const { low, high } = overLaws(laws, (law) => raAfter(law, 0.7, 20));
      const before = overLaws(fadeLaws("hybrid", 0.7, [], assume()), (law) => raAfter(law, 0.7, 20));
      expect(high - low).toBeLessThan(before.high - before.low);
      const actual = raAfter(truth, 0.7, 20);
      if (actual >= low && actual <= high) inside++;
    }
    expect(inside).toBeGreaterThanOrEqual(32);
  });

  it("weights of the possible laws sum to one", () => {
    const laws = fadeLaws("pearl", 0.45, [{ games: 12, raUm: 0.3, where: "track" }], assume());
    expect(laws.reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(1, 12);
  });
});

describe("care", () => {
  it("a dull reactive finish is due for refreshing within about thirty games (published, second-hand), and harder lanes bring it sooner", () => {
    const refresh = careOf(use("1000")).refresh;
    expect(refresh.value).toBeGreaterThan(5);
    expect(refresh.value).toBeLessThan(30);
    expect(careOf({ ...use("1000"), abrasiveness: 2 }).refresh.value).toBeLessThan(refresh.value ?? 0);
  });

  it("extraction at 40 to 50 games, resurfacing at 60 to 80; not for urethane (common practice; published, second-hand)", () => {
    const care = careOf(use("2000", 30));
    expect(care.extraction).toEqual({ low: 10, value: 15, high: 20 });
    expect(care.resurfacing).toEqual({ low: 30, value: 40, high: 50 });
    expect(careOf(use("2000", 90)).extraction.value).toBe(0);
    expect(careOf({ ...use("1000"), cover: "urethane" }).extraction.value).toBeNull();
  });
});
