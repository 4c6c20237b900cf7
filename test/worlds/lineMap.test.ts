import { describe, expect, it } from "vitest";
import { assume } from "#engine/assumptions";
import { pinsAt, qualityShift, strikeAt, strikeMap, trusted } from "#engine/pins/carry";
import { groundOf, throwerOn, usualQuality, volleyOn } from "#engine/planning/ground";
import { hitsOn } from "#engine/planning/hits";
import { lineMap } from "#engine/planning/lineMap";
import { chanceAt, chosen, filmFound, mapOf, STAGES, scoreOf, sessionOf } from "#engine/planning/session";
import { STYLES, type StyleId } from "#engine/planning/situations";
import { playableLines } from "#engine/planning/softLines";
import { spreadSample } from "#engine/planning/spreadSample";
import { nudged } from "#engine/planning/thrown";
import { parseFinish } from "#engine/surface/finish";
import { asked } from "../planning/questions.ts";

const FINISHES = ["500", "1000", "2000", "4000", "4000 + polish"];

describe("the chance on a line by the map, against shots thrown one by one", () => {
  const sample = spreadSample(8192, 7);
  const errors = (Object.keys(STYLES) as StyleId[]).map((style) => {
    const question = asked(style, "hybrid", "medium-41");
    const ground = groundOf(question);
    const film = filmFound(ground);
    return FINISHES.flatMap((text) => {
      const finish = parseFinish(text);
      const map = mapOf(ground, finish, film, "strikeChance");
      const { best } = chosen(map, question.limits, "strikeChance");
      if (best === null || best.chance < 0.05) return [];
      const usual = usualQuality(question);
      const hits = hitsOn(throwerOn(film, question, finish, ground.assumed), question.ball.massLb, best.line, sample);
      const thrown =
        hits.reduce(
          (sum, { board, entryDeg, quality }) => sum + nudged(strikeAt(ground.carry, board, entryDeg), qualityShift(usual, quality)),
          0,
        ) / hits.length;
      return [100 * (best.chance - thrown)];
    });
  });

  it("levels are right to 2.5 strikes in a hundred", () => {
    for (const one of errors.flat()) expect(Math.abs(one)).toBeLessThan(2.5);
  });

  it("differences between finishes of one bowler are right to 1 in the mean square, and to 2.5", () => {
    const differences = errors.flatMap((own) => own.map((error) => error - own.reduce((sum, one) => sum + one, 0) / own.length));
    expect(Math.sqrt(differences.reduce((sum, one) => sum + one ** 2, 0) / differences.length)).toBeLessThan(1);
    for (const one of differences) expect(Math.abs(one)).toBeLessThan(2.5);
  });
});

describe("a score moves with its question, not with its grid", () => {
  it("by less than 0.2 strikes in a hundred where the limits, and so the grid, begin a fraction of a step elsewhere", () => {
    const question = asked("matched", "hybrid", "medium-41");
    const differenceAt = (shift: number) => {
      const limits = { ...question.limits, laydownBoard: [9 - shift, 36] as const, launchAngleDeg: [-1.5 - shift / 10, 4.5] as const };
      const ground = groundOf({ ...question, limits });
      const [one, other] = ["1000", "4000"].map((text) =>
        scoreOf(ground, parseFinish(text), sessionOf(ground, parseFinish(text), filmFound(ground), STAGES, "strikeChance"), "strikeChance"),
      );
      return 100 * (one - other);
    };
    const differences = [0, 0.4, 0.8, 1.2, 1.6].map(differenceAt);
    const mean = differences.reduce((sum, one) => sum + one, 0) / differences.length;
    expect(Math.sqrt(differences.reduce((sum, one) => sum + (one - mean) ** 2, 0) / differences.length)).toBeLessThan(0.2);
  });

  it("is the mean over near-best lines: none of them far from the best, shares that sum to one", () => {
    const question = asked("matched", "hybrid", "medium-41");
    const ground = groundOf(question);
    const map = mapOf(ground, parseFinish("2000"), filmFound(ground), "strikeChance");
    const { lines, best, score } = chosen(map, question.limits, "strikeChance");
    expect(lines.reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(1, 9);
    expect(best?.chance).toBe(Math.max(...playableLines(map, question.limits).map((at) => map.chance[at])));
    expect(score).toBeLessThanOrEqual(best?.chance ?? 0);
    expect(score).toBeGreaterThan((best?.chance ?? 0) - 0.02);
  });
});

describe("carry as far as it can be trusted", () => {
  const raw = strikeMap(assume());
  const held = trusted(raw);

  it("falls on the way out from the pocket, on both sides, at every angle; crossing over earns next to nothing", () => {
    for (let entry = 0.5; entry <= 8; entry += 0.5) {
      const right = Array.from({ length: 25 }, (_, i) => strikeAt(held, 16 - 0.25 * i, entry));
      const left = Array.from({ length: 25 }, (_, i) => strikeAt(held, 19 + 0.25 * i, entry));
      for (const side of [right, left]) for (let i = 1; i < side.length; i++) expect(side[i]).toBeLessThanOrEqual(side[i - 1] + 1e-12);
    }
    expect(strikeAt(raw, 22, 5)).toBeGreaterThan(0.5);
    expect(strikeAt(held, 22, 5)).toBeLessThan(0.05);
  });

  it("is never above the table, and is the table in the pocket", () => {
    for (let at = 0; at < raw.chance.length; at++) expect(held.chance[at]).toBeLessThanOrEqual(raw.chance[at]);
    expect(strikeAt(held, 17.25, 5)).toBe(strikeAt(raw, 17.25, 5));
  });

  it("pins fall away evenly beyond the table's edge, to the one of a ball on the corner pin", () => {
    const pins = [13, 12, 10, 8, 6, 4, 3].map((board) => pinsAt(board, 3));
    for (let i = 1; i < pins.length; i++) expect(pins[i]).toBeLessThanOrEqual(pins[i - 1] + 0.3);
    expect(pinsAt(20 - 18 / (41.5 / 39), 3)).toBeCloseTo(1, 6);
  });
});

it("a bowler without scatter hits where the middle of the deliveries does", () => {
  const question = asked("matched", "hybrid", "medium-41");
  const still = { launchAngleDeg: 0, laydownBoards: 0, speedMph: 0, revRateRpm: 0, axisRotationDeg: 0 };
  const ground = groundOf({ ...question, bowler: { ...question.bowler, spread: still } });
  const map = lineMap(
    volleyOn(filmFound(ground), ground.question, parseFinish("2000"), ground.assumed),
    usualQuality(question),
    ground.carry,
    question.limits,
  );
  const line = { laydownBoard: 17, launchAngleDeg: 1.5 };
  const [hit] = hitsOn(throwerOn(filmFound(ground), ground.question, parseFinish("2000"), ground.assumed), 15, line, new Float64Array(5));
  expect(chanceAt(map, line)).toBeCloseTo(strikeAt(ground.carry, hit.board, hit.entryDeg), 1);
});
