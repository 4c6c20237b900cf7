import { describe, expect, it } from "vitest";
import { choose, runnerUp, type WaysProblem } from "#engine/planning/bag/choose";
import { type BagChoice, type BagOption, type BagProblem, bestChoice, bestRoute } from "#engine/planning/bag/optimum";
import type { WayOption } from "#engine/planning/bag/options";
import { uniformSource } from "#engine/random";

/** Every choice of options and every sequence, one by one. */
function exhaustive({ balls, stages, changeCost, budgets }: BagProblem): BagChoice[] {
  const found: BagChoice[] = [];
  const descend = (taken: (number | null)[]) => {
    if (taken.length < balls.length) {
      for (const option of [null, ...balls[taken.length].keys()]) descend([...taken, option]);
      return;
    }
    const uses = budgets.map((_, i) =>
      taken.reduce((sum: number, option, ball) => sum + (option === null ? 0 : balls[ball][option].uses[i]), 0),
    );
    if (uses.some((used, i) => used > budgets[i])) return;
    for (let code = 0; code < balls.length ** stages; code++) {
      const sequence = Array.from({ length: stages }, (_, stage) => Math.floor(code / balls.length ** stage) % balls.length);
      if (sequence.some((ball) => taken[ball] === null)) continue;
      if (taken.some((option, ball) => option !== null && !sequence.includes(ball))) continue;
      const worth = sequence.reduce(
        (sum, ball, stage) =>
          sum + balls[ball][taken[ball] as number].worth[stage] - (stage > 0 && sequence[stage - 1] !== ball ? changeCost : 0),
        0,
      );
      found.push({ options: taken, sequence, worth });
    }
  };
  descend([]);
  return found.sort((a, b) => b.worth - a.worth);
}

function randomProblem(seed: number, balls: number, options: number, stages: number): BagProblem {
  const uniform = uniformSource(seed);
  const option = (): BagOption => ({
    worth: Array.from({ length: stages }, () => 1 + uniform()),
    uses: [Math.floor(4 * uniform()), Math.floor(2 * uniform())],
  });
  return {
    balls: Array.from({ length: balls }, () => Array.from({ length: options }, option)),
    stages,
    changeCost: 0.4 * uniform(),
    budgets: [3 + Math.floor(4 * uniform()), 1 + Math.floor(2 * uniform())],
  };
}

describe("the best choice of balls and finishes", () => {
  it.each(Array.from({ length: 60 }, (_, i) => i + 1))("is the exhaustive one (random problem, seed %i)", (seed) => {
    const problem = randomProblem(seed, 2 + (seed % 2), 2 + (seed % 3 === 0 ? 1 : 0), 4);
    const best = bestChoice(problem);
    const [known] = exhaustive(problem);
    expect(best === null).toBe(known === undefined);
    expect(best?.worth ?? 0).toBeCloseTo(known?.worth ?? 0, 10);
  });

  it("throws one ball all through where a change costs more than it brings", () => {
    const alternating = [
      [1, 0.9, 1, 0.9],
      [0.9, 1, 0.9, 1],
    ];
    expect(bestRoute(alternating, 4, 0.2)?.sequence).toEqual([0, 0, 0, 0]);
    expect(bestRoute(alternating, 4, 0.04)?.sequence).toEqual([0, 1, 0, 1]);
    expect(bestRoute([[Number.NEGATIVE_INFINITY]], 1, 0)).toBeNull();
  });

  it("has no answer where nothing fits", () => {
    expect(bestChoice({ balls: [[{ worth: [1], uses: [5] }]], stages: 1, changeCost: 0, budgets: [4] })).toBeNull();
    expect(bestChoice({ balls: [[]], stages: 1, changeCost: 0, budgets: [] })).toBeNull();
  });
});

describe("the choice between plans", () => {
  const way = (minutes: number, ...drawn: readonly (readonly number[])[]): WayOption => ({
    rated: { state: { minutes } as WayOption["rated"]["state"], worth: [], draws: null },
    touch: null,
    uses: [minutes],
    drawn,
    worth: drawn[0].map((_, stage) => drawn.reduce((sum, row) => sum + row[stage], 0) / drawn.length),
  });
  const problem = (...ways: readonly (readonly WayOption[])[]): WaysProblem => ({ ways, stages: 2, changeCost: 0.3, budgets: [60] });

  it("goes with the best mean where that is better by more than makes no difference", () => {
    const chosen = choose(problem([way(0, [4, 4], [4, 4])], [way(20, [6, 6], [6, 6])]), 0.6);
    expect(chosen?.best.choice.sequence).toEqual([1, 1]);
    expect(chosen?.sureShare).toBe(1);
    expect(chosen?.noWork?.drawn).toEqual([8, 8]);
  });

  it("takes the one with less work of two that are as good", () => {
    const chosen = choose(problem([way(0, [4, 4], [4, 4])], [way(20, [4.05, 4.05], [4.05, 4.05])]), 0.6);
    expect(chosen?.best.minutes).toBe(0);
    expect(chosen?.top.minutes).toBe(20);
  });

  it("takes the one that loses less where the model may be wrong, of two with nearly the same mean", () => {
    const steady = way(20, [4, 4], [4, 4], [4, 4], [4, 4]);
    const bold = way(0, [5, 5], [5, 5], [5, 5], [1.05, 1.05]);
    expect(choose(problem([steady], [bold]), 0.6)?.best.choice.sequence).toEqual([0, 0]);
  });

  it("tells what would be lost without a ball, and the best with one ball", () => {
    const fresh = way(0, [6, 2], [6, 2]);
    const burnt = way(0, [2, 6], [2, 6]);
    const chosen = choose(problem([fresh], [burnt]), 0.6);
    expect(chosen?.best.choice.sequence).toEqual([0, 1]);
    expect(chosen?.best.drawn[0]).toBeCloseTo(11.7, 10);
    expect(chosen?.without.map((rival) => rival?.drawn[0])).toEqual([8, 8]);
    expect(chosen?.oneBall?.drawn[0]).toBe(8);
    expect(runnerUp(problem([fresh], [burnt]), chosen?.best.choice as BagChoice, 0, 0)).toEqual({ ball: 1, option: 0 });
  });
});
