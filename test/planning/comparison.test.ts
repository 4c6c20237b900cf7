import { describe, expect, it } from "vitest";
import { compare, type Scored } from "#engine/planning/comparison";
import { parseFinish } from "#engine/surface/finish";
import { effectiveWorlds } from "#engine/worlds/effectiveNumber";

const WORLDS = 64;
const weights = new Array<number>(WORLDS).fill(1);
const shares = { weights, priorWeights: weights };

/** A finish with its mean, and a swing that differs from the others' from world to world. */
function scored(finish: string, score: number, swing: number): Scored {
  return { finish: parseFinish(finish), score, drawn: weights.map((_, world) => score + (world % 2 === 0 ? swing : -swing)) };
}

describe("which finishes are too close to call", () => {
  it("a finish that is better than one of them is one of them, however well it is known to be behind the best", () => {
    // 1000 swings against the best and is tied by chance alone; 500, as good, goes with the best and is known to a hair to be behind it.
    const standings = [scored("500", 0.492, 0), scored("1000", 0.49, 0.1), scored("2000", 0.5, 0), scored("4000 + polish", 0.45, 0)];
    const { plateau, best } = compare(standings, shares, "strikeChance", null);
    expect(standings[best].finish).toEqual(parseFinish("2000"));
    // By hand: the error of the mean of ±.1 over 64 worlds is .0125, so 1000 at .01 behind is tied and 500, .008 behind it, is not by itself.
    expect(plateau).toEqual([0, 2]);
  });

  it("without such a one, what is known to be behind stays behind", () => {
    const standings = [scored("500", 0.488, 0), scored("1000", 0.49, 0.1), scored("2000", 0.5, 0)];
    expect(compare(standings, shares, "strikeChance", null).plateau).toEqual([1, 2]);
  });
});

it("rows that stand in one world count as that world: by hand, shares of ½, ¼, ¼ are 1/(¼ + 1/16 + 1/16) worlds", () => {
  const rows = [0, 0, 1, 2].map((world) => ({ world, weight: 0.25 }));
  expect(effectiveWorlds(rows)).toBeCloseTo(8 / 3, 12);
});
