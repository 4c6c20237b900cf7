import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { assume } from "#engine/assumptions";
import { COVER_IDS } from "#engine/ball/ball";
import { COVERS } from "#engine/ball/covers";
import { NO_FINDINGS } from "#engine/rules/stops";
import { ABRASIVE_IDS, ABRASIVES, type AbrasiveId } from "#engine/surface/abrasives";
import { planBatch } from "#engine/surface/batch";
import type { BenchBall } from "#engine/surface/benchBall";
import { depthRateUm, valleyDepthUm } from "#engine/surface/cut";
import { effectiveRaUm, parseFinish } from "#engine/surface/finish";
import { roughnessOfHistory, type WorkDone } from "#engine/surface/history";
import { ownCut } from "#engine/surface/ownCut";
import { checkRecipe, type RecipeStage } from "#engine/surface/recipe";
import { ladder, planStages, USUAL_HABITS } from "#engine/surface/stages";

const BALL: BenchBall = {
  cover: "solid",
  hardnessD: null,
  diameterIn: 8.594,
  finish: parseFinish("2000"),
  history: [],
  gamesSince: 30,
  raMicroinch: null,
  compared: null,
  trackWear: "light",
  plug: "none",
  oil: "clean",
};
const covers = fc.constantFrom(...COVER_IDS);
const balls = fc.record({
  cover: covers,
  hardnessD: fc.option(fc.double({ min: 65, max: 90, noNaN: true })),
  diameterIn: fc.double({ min: 8.5, max: 8.595, noNaN: true }),
  history: fc.constant([]),
  finish: fc.constantFrom("500", "1000", "2000", "4000", "4000 + polish").map((text) => parseFinish(text)),
  gamesSince: fc.integer({ min: 0, max: 120 }),
  raMicroinch: fc.option(fc.double({ min: 2, max: 60, noNaN: true })),
  compared: fc.constantFrom(null, "smoother" as const, "alike" as const, "muchDuller" as const),
  trackWear: fc.constantFrom("none" as const, "light" as const, "deep" as const),
  plug: fc.constantFrom("none" as const, "proud" as const, "flush" as const),
  oil: fc.constantFrom("clean" as const, "some" as const, "soaked" as const),
});
const wantedFinishes = fc
  .constantFrom("500", "800", "1000", "2000", "3000", "4000", "1000 + polish", "4000 + polish")
  .map((text) => parseFinish(text));

describe("stages, for any ball and finish", () => {
  it("go from coarse to fine, in steps of the trade's rules (common practice: grain ratio about 2, one number skipped)", () => {
    fc.assert(
      fc.property(balls, wantedFinishes, (ball, wanted) => {
        const cuts = planStages(ball, wanted, NO_FINDINGS)
          .stages.filter(({ kind }) => kind === "cut")
          .map(({ abrasive }) => ABRASIVES[abrasive ?? "pad-500"]);
        expect(cuts.length).toBeGreaterThan(0);
        for (let i = 1; i < cuts.length; i++) {
          expect(cuts[i].grainUm).toBeLessThan(cuts[i - 1].grainUm);
          expect(cuts[i - 1].grainUm / cuts[i].grainUm).toBeLessThan(2.05);
        }
      }),
      { seed: 1 },
    );
  });

  it("end at the finish wanted: the range holds its own roughness", () => {
    fc.assert(
      fc.property(balls, wantedFinishes, (ball, wanted) => {
        const { expectedRaUm } = planStages(ball, wanted, NO_FINDINGS);
        const ra = effectiveRaUm(wanted);
        expect(expectedRaUm.low).toBeLessThan(1.1 * ra);
        expect(expectedRaUm.high).toBeGreaterThan(0.9 * ra);
      }),
      { seed: 2 },
    );
  });

  it("keep wet paper wet and off resin but for plugs (common practice)", () => {
    fc.assert(
      fc.property(balls, wantedFinishes, fc.boolean(), (ball, wanted, dry) => {
        for (const stage of planStages(ball, wanted, NO_FINDINGS, { ...USUAL_HABITS, dry }).stages) {
          if (stage.abrasive === null || ABRASIVES[stage.abrasive].kind !== "wetPaper") continue;
          expect(stage.wet).toBe(true);
          if (COVERS[ball.cover].reactive) expect(stage.kind).toBe("plug");
        }
      }),
      { seed: 3 },
    );
  });

  it("warn of wet paper wherever wet paper is planned, on whatever cover, and have the ball looked over before the first cut (common practice)", () => {
    fc.assert(
      fc.property(balls, wantedFinishes, fc.constantFrom("none", "proud" as const), (ball, wanted, plug) => {
        const { stages } = planStages({ ...ball, plug: plug as "none" | "proud" }, wanted, NO_FINDINGS, USUAL_HABITS);
        let warned = false;
        let isCut = false;
        for (const { abrasive, cautions, removedUm } of stages) {
          warned ||= cautions.includes("wetPaper");
          if (abrasive !== null && ABRASIVES[abrasive].kind === "wetPaper") expect(warned).toBe(true);
          if (abrasive !== null && !isCut && removedUm > 0) expect(cautions).toContain("lookFirst");
          isCut ||= removedUm > 0;
        }
      }),
      { seed: 11 },
    );
  });

  it("put the final finish after the extraction, whichever order the shop likes (common practice)", () => {
    for (const oilOrder of ["extractFirst", "openFirst"] as const) {
      const kinds = planStages({ ...BALL, oil: "soaked" }, parseFinish("3000"), NO_FINDINGS, { ...USUAL_HABITS, oilOrder }).stages.map(
        ({ kind }) => kind,
      );
      expect(kinds.indexOf("extract")).toBeGreaterThan(0);
      expect(kinds.lastIndexOf("cut")).toBeGreaterThan(kinds.indexOf("extract"));
      expect(kinds[kinds.indexOf("extract") + 1]).toBe("dryOff");
      expect(kinds.includes("open")).toBe(oilOrder === "openFirst");
    }
  });

  it("take off what the last stage left, unless a side would take longer than anybody stands there", () => {
    const { stages } = planStages({ ...BALL, trackWear: "deep" }, parseFinish("4000"), NO_FINDINGS);
    const cuts = stages.filter(({ kind }) => kind === "cut");
    for (let i = 1; i < cuts.length; i++) {
      const left = valleyDepthUm(cuts[i - 1].expectedRaUm?.value ?? Number.NaN, assume());
      expect(cuts[i].removedUm).toBeGreaterThan(0.9 * left);
    }
  });

  it("a harder cover takes longer, by the ratio of the hardnesses (Archard 1953)", () => {
    const setting = { grainUm: 10, force: "medium", by: "spinner", spinnerRpm: 400, diameterIn: 8.594, ownCut: 1 } as const;
    expect(depthRateUm({ ...setting, hardnessD: 72 }, assume()) / depthRateUm({ ...setting, hardnessD: 80 }, assume())).toBeCloseTo(
      80 / 72,
      12,
    );
  });

  it("stop before they start: crack, hollow sound and an open claim leave no stages; the rest is put right first (common practice)", () => {
    for (const found of ["crack", "hollowSound", "claimOpen"] as const) {
      const plan = planStages(BALL, parseFinish("2000"), { ...NO_FINDINGS, [found]: true });
      expect(plan.stages).toEqual([]);
      expect(plan.stops).toEqual([{ id: found, hard: true }]);
    }
    const plan = planStages(BALL, parseFinish("2000"), { ...NO_FINDINGS, cold: true, serialPhotographed: false, hasInserts: true });
    expect(plan.stops.map(({ id }) => id)).toEqual(["coldBall", "serialNotPhotographed", "insertsNotMasked"]);
    expect(plan.stages.length).toBeGreaterThan(0);
  });

  it("name a hazard when it comes, not on every step", () => {
    const { stages } = planStages({ ...BALL, trackWear: "deep" }, parseFinish("4000 + polish"), NO_FINDINGS);
    const spinner = stages.flatMap(({ cautions }, i) => (cautions.includes("spinner") ? [i] : []));
    expect(spinner).toHaveLength(1);
    expect(stages.find(({ kind }) => kind === "polish")?.cautions).toEqual(["polish"]);
  });

  it("name the sides: six opposite pairs, or the pairs that are left with fewer", () => {
    const sidesOf = (sides: 2 | 4 | 6) =>
      planStages(BALL, parseFinish("2000"), NO_FINDINGS, { ...USUAL_HABITS, sides }).stages.find(({ kind }) => kind === "cut")?.sideIds;
    expect(sidesOf(6)).toEqual(["grip", "opposite", "left", "right", "fingers", "thumb"]);
    expect(sidesOf(2)).toEqual(["grip", "opposite"]);
    expect(planStages(BALL, parseFinish("2000"), NO_FINDINGS).stages[0].sideIds).toEqual([]);
  });

  it("count down to what ends the ball first", () => {
    const thin = planStages({ ...BALL, diameterIn: 8.5005 }, parseFinish("500"), NO_FINDINGS);
    expect(thin.ends[0].what).toBe("diameter");
    const thick = planStages(BALL, parseFinish("500"), NO_FINDINGS);
    expect(thick.ends[0].what).toBe("serial");
    expect(thick.diameterLossIn).toBeCloseTo((2 * thick.removedUm) / 25400, 12);
  });
});

describe("a ball of which something is not known", () => {
  const cutsOf = (ball: BenchBall, wanted = "3000") =>
    planStages(ball, parseFinish(wanted), NO_FINDINGS).stages.filter(({ kind }) => kind === "cut");

  it("is cut back to 500 first where nobody knows its finish, or it has deep scratches, never begun at a fine pad (common practice)", () => {
    for (const ball of [
      { ...BALL, finish: null, gamesSince: 0 },
      { ...BALL, finish: parseFinish("4000"), gamesSince: 0, scratches: "deep" as const },
    ]) {
      expect(cutsOf(ball)[0].abrasive).toBe("pad-500");
      expect(cutsOf({ ...ball, cover: null }, "2000")[0].abrasive).toBe("pad-500");
    }
    expect(cutsOf({ ...BALL, finish: null })[0].why).toBe("unknownBefore");
    expect(cutsOf({ ...BALL, scratches: "deep" })[0].why).toBe("scratches");
  });

  it("begins where a reading of the surface says, also without a name of its finish", () => {
    const read = { ...BALL, finish: null, trackWear: "none" as const, raMicroinch: 4 };
    expect(cutsOf(read)[0].why).toBe("establish");
    expect(cutsOf(read)[0].abrasive).toBe(cutsOf({ ...read, finish: parseFinish("4000") })[0].abrasive);
  });

  it("whose cover nobody knows sees no wet paper, and is not opened before the oil comes out: paper eats resin, and polyester needs no opening", () => {
    fc.assert(
      fc.property(balls, wantedFinishes, fc.constantFrom("extractFirst" as const, "openFirst" as const), (ball, wanted, oilOrder) => {
        const unknown = { ...ball, cover: null, plug: "none" as const };
        const { stages } = planStages(unknown, wanted, NO_FINDINGS, { ...USUAL_HABITS, oilOrder });
        expect(stages.filter(({ kind }) => kind === "open")).toEqual([]);
        for (const { abrasive } of stages) if (abrasive !== null) expect(ABRASIVES[abrasive].kind).not.toBe("wetPaper");
      }),
    );
  });

  it("whose cover nobody knows may not end below 500, as no resin may (common practice)", () => {
    const recipe: RecipeStage[] = [
      { abrasive: ABRASIVES["pad-360"], wet: true, by: "spinner", sides: 6, secondsPerSide: 60, force: "medium", spinnerRpm: 400 },
    ];
    const { remarks } = checkRecipe({ ...BALL, cover: null }, parseFinish("360"), recipe);
    expect(remarks.map(({ id }) => id)).toContain("recipe.never");
  });
});

describe("the ladder", () => {
  it.each([
    [500, 4000, [500, 1000, 2000, 4000]],
    [500, 2000, [500, 1000, 2000]],
    [2000, 3000, [2000, 3000]],
    [3000, 3000, [3000]],
  ] as const)("from %d to %d", (from, to, numbers) => {
    expect(ladder(from, to)).toEqual(numbers);
  });
});

describe("a finish as a history", () => {
  const work = (abrasive: WorkDone["abrasive"], by: "spinner" | "hand" = "spinner", usesBefore = 0): WorkDone => ({
    abrasive,
    by,
    usesBefore,
    who: "",
    on: "",
  });
  const bare = { value: 0.5, low: 0.4, high: 0.6 };

  it("the last pad on the spinner says most, and the range holds the value", () => {
    const result = roughnessOfHistory([work(ABRASIVES["pad-500"]), work(ABRASIVES["pad-2000"])], bare);
    expect(result.value).toBeCloseTo(effectiveRaUm(parseFinish("2000")), 1);
    expect(result.low).toBeLessThan(result.value);
    expect(result.high).toBeGreaterThan(result.value);
  });

  it("polish over 500 is not polish over 4000 (common practice)", () => {
    const over = (pad: "pad-500" | "pad-4000") => roughnessOfHistory([work(ABRASIVES[pad]), work(ABRASIVES["cutting-polish"])], bare).value;
    expect(over("pad-500")).toBeGreaterThan(2 * over("pad-4000"));
  });

  it("a polish that only fills leaves more of the base than one that cuts", () => {
    const left = (polish: "cutting-polish" | "slip-polish") =>
      roughnessOfHistory([work(ABRASIVES["pad-1000"]), work(ABRASIVES[polish])], bare).value;
    expect(left("slip-polish")).toBeGreaterThan(left("cutting-polish"));
  });

  it("hand work gets less far, a worn pad cuts finer", () => {
    const left = (by: "spinner" | "hand", uses = 0) =>
      roughnessOfHistory([work(ABRASIVES["pad-500"], by, uses)], { value: 0.2, low: 0.2, high: 0.2 }).value;
    expect(left("hand")).toBeLessThan(0.6 * left("spinner"));
    expect(left("spinner", 20)).toBeLessThan(left("spinner"));
    expect(left("spinner", 20)).toBeCloseTo(left("spinner", 200), 12);
  });
});

describe("a recipe that somebody gives", () => {
  const stage = (abrasive: AbrasiveId, more: Partial<RecipeStage> = {}): RecipeStage => ({
    abrasive: ABRASIVES[abrasive],
    wet: true,
    by: "spinner",
    sides: 6,
    secondsPerSide: 60,
    force: "medium",
    spinnerRpm: 400,
    ...more,
  });
  const remarks = (wanted: string, ...recipe: RecipeStage[]) => checkRecipe(BALL, parseFinish(wanted), recipe).remarks.map(({ id }) => id);

  it.each([
    ["good", "2000", [stage("pad-1000"), stage("pad-2000")], ["recipe.good"]],
    ["paper dry, and on resin", "1000", [stage("paper-P1000", { wet: false })], ["recipe.paperDry", "recipe.paperOnResin"]],
    ["too great a step", "4000", [stage("pad-500"), stage("pad-2000"), stage("pad-4000")], ["recipe.step"]],
    ["backwards", "1000", [stage("pad-2000"), stage("pad-1000")], ["recipe.backwards"]],
    ["too short", "2000", [stage("pad-2000", { secondsPerSide: 2 })], ["recipe.tooShort"]],
    ["four sides", "2000", [stage("pad-2000", { sides: 4 })], ["recipe.sides"]],
    ["ends elsewhere", "4000", [stage("pad-2000")], ["recipe.endsElsewhere"]],
    ["never on resin", "500", [stage("pad-360")], ["recipe.never"]],
  ] as const)("%s", (_name, wanted, recipe, expected) => {
    expect(remarks(wanted, ...recipe)).toEqual(expected);
  });

  it("a plan of our own has nothing to find fault with", () => {
    const plan = planStages(BALL, parseFinish("3000"), NO_FINDINGS);
    const own = plan.stages.flatMap(({ abrasive, wet, sides, secondsPerSide, force, spinnerRpm }) =>
      abrasive === null ? [] : [stage(abrasive, { wet, sides, secondsPerSide, force, spinnerRpm })],
    );
    expect(remarks("3000", ...own)).toEqual(["recipe.good"]);
  });
});

describe("a batch", () => {
  it("does every stage of every ball once, in its own order, and takes a shared pad up once", () => {
    const plans = ["2000", "3000", "4000 + polish"].map((text) =>
      planStages({ ...BALL, trackWear: "deep" }, parseFinish(text), NO_FINDINGS),
    );
    const batch = planBatch(plans);
    for (const [ball, plan] of plans.entries()) {
      expect(batch.flatMap(({ balls: there }) => there.filter((one) => one.ball === ball).map((one) => one.stage))).toEqual(
        plan.stages.map((_, i) => i),
      );
    }
    expect(batch.filter(({ abrasive }) => abrasive === "pad-500")).toHaveLength(1);
    expect(batch.find(({ abrasive }) => abrasive === "pad-500")?.balls).toHaveLength(3);
  });
});

describe("a technician's own cut", () => {
  it("is the usual one without readings, wide; and follows readings made with twice the cut", () => {
    const none = ownCut([]);
    expect(none.value).toBe(1);
    expect(none.high / none.low).toBeGreaterThan(2);
    const usualReach = 0.6;
    const reach = 1 - (1 - usualReach) ** 2;
    const readings = Array.from({ length: 30 }, () => ({ beforeUm: 0.3, leavesUm: 1.1, afterUm: 0.3 * (1.1 / 0.3) ** reach, usualReach }));
    const learned = ownCut(readings);
    expect(learned.value).toBeGreaterThan(1.8);
    expect(learned.value).toBeLessThan(2);
    expect(learned.high / learned.low).toBeLessThan(none.high / none.low);
  });
});

describe("the registry of abrasives", () => {
  it.each(ABRASIVE_IDS)("%s states its kind, grain and source", (id) => {
    const { grainUm, usesBeforeWorn, source, kind, grade } = ABRASIVES[id];
    expect(grainUm).toBeGreaterThanOrEqual(0);
    expect(usesBeforeWorn).toBeGreaterThan(0);
    expect(source.length).toBeGreaterThan(5);
    if (kind === "foamPad" || kind === "wetPaper") expect(grade?.number).toBe(Number(id.replace(/\D/g, "")));
  });
});
