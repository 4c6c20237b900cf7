import { describe, expect, it } from "vitest";
import { worldsOf } from "#engine/planning/comparison";
import { groundIn } from "#engine/planning/ground";
import type { PlanQuestion, TrialShot } from "#engine/planning/question";
import { decide, rate, scoreWorlds, wantedOf } from "#engine/planning/steps";
import { fitOf, predictedBoard, trialMeans, weighedBy } from "#engine/planning/trial";
import { parseFinish } from "#engine/surface/finish";
import { effectiveNumber } from "#engine/worlds/effectiveNumber";
import { ensemble } from "#engine/worlds/ensemble";
import { weightedMean } from "#engine/worlds/weightedMean";
import { asked } from "../planning/questions.ts";

const line = { laydownBoard: 19, launchAngleDeg: 1.9 };
const base = asked("matched", "hybrid", "medium-41", { line });
const shot = (finish: string, boardAtPins: number): TrialShot => ({
  finish: parseFinish(finish),
  boardAtPins,
  sdBoards: 0.5,
  speedMph: null,
});

/** Ten shots with each of two finishes as a world would throw them, without scatter. */
function thrownIn(world: number, finishes: readonly string[]): PlanQuestion {
  const asks = { ...base, trial: finishes.map((finish) => shot(finish, 20)) };
  const ground = groundIn(ensemble().worlds[world], asks);
  return {
    ...base,
    trial: finishes.flatMap((finish) => Array.from({ length: 10 }, () => shot(finish, predictedBoard(ground, parseFinish(finish))))),
  };
}

describe("a trial", () => {
  it("weighs the world that it was thrown in most, and its like; the mean predicted board comes near what was seen", () => {
    const question = thrownIn(11, ["500", "4000 + polish"]);
    expect(fitOf(groundIn(ensemble().worlds[11], question))).toBeCloseTo(0, 9);
    const weighed = weighedBy(question);
    const rank = weighed.filter(({ weight }) => weight > weighed[11].weight).length;
    expect(rank).toBeLessThan(weighed.length / 20);
    const likely = weighed.filter(({ weight }) => weight > 1e-3);
    for (const { finish, boardAtPins, sdBoards } of trialMeans(question)) {
      const boards = likely.map(({ world }) => predictedBoard(groundIn(world, question), finish));
      const after = weightedMean(
        boards,
        likely.map(({ weight }) => weight),
      );
      expect(Math.abs(after - boardAtPins)).toBeLessThan(sdBoards);
    }
  });

  it("that no world says is said, and no pick is sure by it; one that a world threw is not", () => {
    const plan = (trial: readonly TrialShot[]) => {
      const question: PlanQuestion = { ...base, trial, candidates: ["500", "4000 + polish"].map((finish) => parseFinish(finish)) };
      const wanted = wantedOf(question);
      const ratings = wanted.finishes.map((finish) => rate(question, finish, { ...wanted, span: "fresh" }));
      return decide(question, wanted, ratings, [scoreWorlds(question, wanted, "fresh", 0, 24)]);
    };
    const unsaid = (of: ReturnType<typeof plan>) => of.messages.some(({ id }) => id === "message.trialUnsaid");
    // Dull far light and smooth far high of anything that rolls.
    const absurd = plan([shot("500", 2), shot("500", 1), shot("4000 + polish", 38), shot("4000 + polish", 38)]);
    expect(unsaid(absurd)).toBe(true);
    expect(absurd.pick?.sureShare ?? 0).toBeLessThanOrEqual(0.5);
    expect(unsaid(plan(thrownIn(11, ["500", "4000 + polish"]).trial))).toBe(false);
    expect(unsaid(plan([]))).toBe(false);
  });

  it("two finishes tell more than one: fewer worlds are left", () => {
    const left = (finishes: readonly string[]) => {
      const question = thrownIn(5, finishes);
      return ensemble().worlds.reduce((sum, one) => sum + Math.exp(fitOf(groundIn(one, question))), 0);
    };
    expect(left(["500", "4000 + polish"])).toBeLessThan(left(["500"]));
  });

  it("weights after it are those of a direct recount, exp(−½ Σ ((predicted − seen)/sd)²) times the share", () => {
    const question = thrownIn(7, ["1000"]);
    const wanted = wantedOf(question);
    const block = scoreWorlds(question, wanted, "fresh", 0, 6);
    const { weights } = worldsOf([block]);
    const [seen] = trialMeans(question);
    const recount = block.ids.map((id) => {
      const world = ensemble().drawn(id);
      return (
        world.weight * Math.exp(-0.5 * ((predictedBoard(groundIn(world, question), seen.finish) - seen.boardAtPins) / seen.sdBoards) ** 2)
      );
    });
    for (const [i, weight] of weights.entries()) expect(weight / weights[0]).toBeCloseTo(recount[i] / recount[0], 9);
  });

  it("that few worlds say is asked on further nights: what was 50 worlds or fewer counts for more, and the weights are still a recount", () => {
    const question = thrownIn(5, ["500", "4000 + polish"]);
    const own = ensemble().worlds.map((world) => world.weight * Math.exp(fitOf(groundIn(world, question))));
    const weighed = weighedBy(question);
    expect(effectiveNumber(own)).toBeLessThan(50);
    expect(weighed).toHaveLength(ensemble().draws);
    expect(effectiveNumber(weighed.map(({ weight }) => weight))).toBeGreaterThan(2 * effectiveNumber(own));
    for (const at of [0, 400, 1999]) {
      const { world, weight } = weighed[at];
      const [first] = weighed;
      const log = ({ world: of }: typeof first) => Math.log(of.weight) + fitOf(groundIn(of, question));
      expect(Math.log(weight / first.weight)).toBeCloseTo(log(weighed[at]) - log(first), 6);
      expect(world.id).toBe(at);
    }
  });

  it("is refused without a line: a board says nothing without one", () => {
    expect(() => trialMeans({ ...base, line: null, trial: [shot("1000", 17)] })).toThrow(/line/);
  });

  it("the mean of ten is known better than one shot, never better than the model", () => {
    const sd = (shots: number) => trialMeans({ ...base, trial: Array.from({ length: shots }, () => shot("1000", 17)) })[0].sdBoards;
    expect(sd(10)).toBeLessThan(sd(1));
    expect(sd(200)).toBeGreaterThan(0.3);
  });
});
