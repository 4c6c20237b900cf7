import type { FinishDraws } from "#engine/planning/draws";
import type { FinishPlan } from "#engine/planning/plan";
import type { PlanQuestion } from "#engine/planning/question";
import type { FinishRating } from "#engine/planning/rating";
import type { Finish } from "#engine/surface/finish";

/** A piece of a plan that can be computed anywhere: plain data in, plain data out, about a tenth of a second at most. */
export type Unit =
  | { readonly kind: "wanted"; readonly question: PlanQuestion }
  | { readonly kind: "sketch"; readonly question: PlanQuestion; readonly finish: Finish }
  | { readonly kind: "rate"; readonly question: PlanQuestion; readonly finish: Finish }
  | { readonly kind: "draws"; readonly question: PlanQuestion; readonly rating: FinishRating; readonly from: number; readonly to: number }
  | {
      readonly kind: "decide";
      readonly question: PlanQuestion;
      readonly ratings: readonly FinishRating[];
      readonly draws: readonly FinishDraws[];
    };

/** What a unit of each kind gives back. */
export interface UnitResults {
  /** The finishes to be rated, and how many draws the final answer takes. */
  readonly wanted: { readonly finishes: readonly Finish[]; readonly draws: number };
  readonly sketch: FinishRating;
  readonly rate: FinishRating;
  readonly draws: FinishDraws;
  readonly decide: FinishPlan;
}

export type ResultOf<U extends Unit> = UnitResults[U["kind"]];
