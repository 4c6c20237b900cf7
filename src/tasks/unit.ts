import type { Line } from "#engine/delivery/bowler";
import type { FilmMap } from "#engine/lane/filmMap";
import type { BagPlan } from "#engine/planning/bag/bagPlan";
import type { BagFound } from "#engine/planning/bag/decideBag";
import type { StageLane } from "#engine/planning/bag/films";
import type { BagQuestion } from "#engine/planning/bag/question";
import type { BallState } from "#engine/planning/bag/states";
import type { StageWorth, StateDraws } from "#engine/planning/bag/worth";
import type { PlayedInWorld } from "#engine/planning/oilInPlay/inWorlds";
import type { LaneNow, PlayQuestion } from "#engine/planning/oilInPlay/session";
import type { FinishPlan } from "#engine/planning/plan";
import type { PlanQuestion } from "#engine/planning/question";
import type { FinishRating, RatingAsked } from "#engine/planning/rating";
import type { Wanted } from "#engine/planning/steps";
import type { WorldBlock } from "#engine/planning/worldScores";
import type { Finish } from "#engine/surface/finish";

/** A piece of a plan that can be computed anywhere: plain data in, plain data out, about a tenth of a second at most. */
export type Unit =
  | { readonly kind: "wanted"; readonly question: PlanQuestion }
  | { readonly kind: "rate"; readonly question: PlanQuestion; readonly finish: Finish; readonly asked: RatingAsked }
  | {
      readonly kind: "worlds";
      readonly question: PlanQuestion;
      readonly wanted: Wanted;
      readonly span: WorldBlock["span"];
      readonly from: number;
      readonly to: number;
    }
  | {
      readonly kind: "decide";
      readonly question: PlanQuestion;
      readonly wanted: Wanted;
      readonly ratings: readonly FinishRating[];
      readonly blocks: readonly WorldBlock[];
    }
  | BagUnit
  | { readonly kind: "laneAsLaid"; readonly question: PlayQuestion }
  | { readonly kind: "playPiece"; readonly question: PlayQuestion; readonly now: LaneNow }
  | { readonly kind: "playedInWorld"; readonly question: PlayQuestion; readonly world: number };

/** A piece of a bag plan. */
export type BagUnit =
  | { readonly kind: "bagStates"; readonly question: BagQuestion }
  | { readonly kind: "bagStart"; readonly question: BagQuestion; readonly thrown: Thrown | null }
  | { readonly kind: "bagLane"; readonly question: BagQuestion; readonly from: LaneNow; readonly thrown: Thrown | null }
  | { readonly kind: "bagWorth"; readonly question: BagQuestion; readonly state: BallState; readonly films: readonly FilmMap[] }
  | {
      readonly kind: "bagDraws";
      readonly question: BagQuestion;
      readonly state: BallState;
      readonly films: readonly FilmMap[];
      readonly lines: readonly (Line | null)[];
    }
  | { readonly kind: "bagDecide"; readonly question: BagQuestion; readonly found: BagFound };

/** A ball of the bag in one of its states. */
export interface Thrown {
  readonly ball: number;
  readonly state: number;
}

/** What a unit of each kind gives back. */
export interface UnitResults {
  readonly wanted: Wanted;
  readonly rate: FinishRating;
  readonly worlds: WorldBlock;
  readonly decide: FinishPlan;
  /** Every state of every ball, ball by ball, and the ordinary balls that gaps are looked for with. */
  readonly bagStates: { readonly states: readonly BallState[]; readonly references: readonly BallState[] };
  readonly bagStart: LaneNow;
  readonly bagLane: StageLane;
  readonly bagWorth: readonly StageWorth[];
  readonly bagDraws: StateDraws;
  readonly bagDecide: { readonly plan: BagPlan; readonly thrown: readonly Thrown[] };
  readonly laneAsLaid: LaneNow;
  readonly playPiece: LaneNow;
  readonly playedInWorld: PlayedInWorld;
}

export type ResultOf<U extends Unit> = UnitResults[U["kind"]];
