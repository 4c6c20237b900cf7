import { type Assumed, assume } from "../assumptions.ts";
import { careRules } from "../ball/ball.ts";
import type { Message } from "../message.ts";
import type { Abrasive } from "./abrasives.ts";
import { type BenchBall, hardnessOf, trackRoughness } from "./benchBall.ts";
import { depthRateUm, type Force, valleyDepthUm } from "./cut.ts";
import { effectiveRaUm, type Finish, finishText } from "./finish.ts";
import { type RoughnessRange, roughnessOfHistory } from "./history.ts";
import { MOST_GRAIN_RATIO } from "./stages.ts";

/** A stage that somebody gives: what the shop always did, what a card says. */
export interface RecipeStage {
  readonly abrasive: Abrasive;
  readonly wet: boolean;
  readonly by: "spinner" | "hand";
  readonly sides: number;
  readonly secondsPerSide: number;
  readonly force: Force;
  readonly spinnerRpm: number;
}

export const RECIPE_REMARKS = [
  /** Wet paper used dry ruins the ball. [stage] */
  "recipe.paperDry",
  /** Wet paper on resin eats it; for plug work and deep resurfacing only. [stage] */
  "recipe.paperOnResin",
  /** Grain ratio over two. [stage, ratio] */
  "recipe.step",
  /** Goes back to a coarser grain. [stage] */
  "recipe.backwards",
  /** Takes off less than the last stage left. [stage, removedUm, neededUm, seconds] */
  "recipe.tooShort",
  /** Fewer than six sides leave bands. [stage, sides] */
  "recipe.sides",
  /** Ends at another surface than wanted. [raUm, wantedUm, wanted] */
  "recipe.endsElsewhere",
  /** Never a final finish on this cover. [number, least] */
  "recipe.never",
  /** Nothing to find fault with. [] */
  "recipe.good",
] as const;
export type RecipeRemark = Message<(typeof RECIPE_REMARKS)[number]>;

export interface RecipeVerdict {
  readonly remarks: readonly RecipeRemark[];
  /** After each stage, µm effective. */
  readonly afterUm: readonly RoughnessRange[];
}

/** A stage may leave this share of the last one's valleys before it is called too short. */
const ENOUGH = 0.8;
/** A surface this much off the wanted one, as a factor, is another surface. */
const ELSEWHERE = 1.35;

/** Checks and explains a recipe against the step rules (common practice) and the depth each stage must take off. */
export function checkRecipe(ball: BenchBall, wanted: Finish, recipe: readonly RecipeStage[], a: Assumed = assume()): RecipeVerdict {
  const remarks: RecipeRemark[] = [];
  const afterUm: RoughnessRange[] = [];
  let roughness: RoughnessRange = trackRoughness(ball, a);
  let needed = valleyDepthUm(roughness.value, a);
  let before: Abrasive | null = null;
  for (const [i, stage] of recipe.entries()) {
    const { abrasive } = stage;
    remarks.push(...ofUse(i + 1, stage, abrasive, ball), ...ofStep(i + 1, abrasive, before));
    if (cuts(abrasive)) {
      const rate = depthRateUm(
        {
          ...stage,
          grainUm: abrasive.grainUm,
          diameterIn: ball.diameterIn,
          hardnessD: hardnessOf(ball),
          ownCut: 1,
        },
        a,
      );
      const removedUm = rate * stage.sides * stage.secondsPerSide;
      if (removedUm < ENOUGH * needed) {
        remarks.push({
          id: "recipe.tooShort",
          params: { stage: i + 1, removedUm, neededUm: needed, seconds: needed / (rate * Math.max(1, stage.sides)) },
        });
      }
    }
    roughness = roughnessOfHistory([{ abrasive, by: stage.by, usesBefore: 0, who: "", on: "" }], roughness);
    needed = valleyDepthUm(roughness.value, a);
    afterUm.push(roughness);
    before = abrasive;
  }
  remarks.push(...ofEnd(ball, wanted, recipe, roughness, a));
  return { remarks: remarks.length > 0 ? remarks : [{ id: "recipe.good", params: {} }], afterUm };
}

function cuts({ kind }: Abrasive): boolean {
  return kind === "foamPad" || kind === "wetPaper" || kind === "wovenPad";
}

function ofUse(stage: number, { wet, sides }: RecipeStage, abrasive: Abrasive, ball: BenchBall): RecipeRemark[] {
  const remarks: RecipeRemark[] = [];
  if (abrasive.kind === "wetPaper" && !wet) remarks.push({ id: "recipe.paperDry", params: { stage } });
  if (abrasive.kind === "wetPaper" && careRules(ball.cover).wetPaper === "deepOnly" && ball.plug === "none" && ball.trackWear !== "deep") {
    remarks.push({ id: "recipe.paperOnResin", params: { stage } });
  }
  if (sides < 6) remarks.push({ id: "recipe.sides", params: { stage, sides } });
  return remarks;
}

function ofStep(stage: number, abrasive: Abrasive, before: Abrasive | null): RecipeRemark[] {
  if (before === null || !cuts(abrasive) || !cuts(before)) return [];
  const ratio = before.grainUm / abrasive.grainUm;
  if (ratio < 0.95) return [{ id: "recipe.backwards", params: { stage } }];
  return ratio > MOST_GRAIN_RATIO ? [{ id: "recipe.step", params: { stage, ratio } }] : [];
}

function ofEnd(ball: BenchBall, wanted: Finish, recipe: readonly RecipeStage[], { value }: RoughnessRange, a: Assumed): RecipeRemark[] {
  const remarks: RecipeRemark[] = [];
  const wantedUm = effectiveRaUm(wanted, a);
  if (Math.max(value / wantedUm, wantedUm / value) > ELSEWHERE)
    remarks.push({ id: "recipe.endsElsewhere", params: { raUm: value, wantedUm, wanted: finishText(wanted) } });
  const { neverBelow } = careRules(ball.cover);
  const last = recipe.at(-1);
  const number = last?.abrasive.grade?.number;
  if (neverBelow !== null && number !== undefined && number < neverBelow)
    remarks.push({ id: "recipe.never", params: { number, least: neverBelow } });
  return remarks;
}
