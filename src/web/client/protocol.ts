import type { JobHouse } from "#contract/job/house";
import type { Predicted } from "#contract/records/predicted";
import type { GameDocument } from "#contract/transitionDocument";
import type { Hand } from "#engine/delivery/bowler";
import type { BowlerMeasured } from "#engine/learning/delivery/measureBowler";
import type { Diagnosis } from "#engine/learning/diagnosis/diagnose";
import type { Correction } from "#engine/learning/house/correct";
import type { Misfit } from "#engine/learning/house/misfit";
import type { NextShot } from "#engine/learning/house/nextShot";
import type { BagPlan } from "#engine/planning/bag/bagPlan";
import type { BagQuestion } from "#engine/planning/bag/question";
import type { LaneNow, PlayQuestion } from "#engine/planning/oilInPlay/session";
import type { FinishPlan } from "#engine/planning/plan";
import type { PlanQuestion } from "#engine/planning/question";
import type { PadStage } from "#engine/surface/padWork/padStage";
import type { SideId } from "#engine/surface/padWork/sides";
import type { MeasureOptions } from "#engine/surface/roughness/measure";
import type { FinishLoss } from "#tasks/losses";
import type { TrialInWorlds } from "#tasks/trialReport";
import type { ResultOf, Unit } from "#tasks/unit";
import type { JobDraft } from "../jobFile/jobDraft.ts";
import type { PredictWanted } from "./predictCall.ts";

/** One thing in the job that does not fit, and what would. */
export interface FieldProblem {
  readonly path: string;
  readonly value: string;
  readonly allowed: string;
}

/** A job that has been read: the question it asks and the fields that nobody filled in, or what is wrong with it. */
export type PlanRequest =
  | { readonly kind: "question"; readonly question: PlanQuestion; readonly defaults: readonly string[] }
  | { readonly kind: "problems"; readonly problems: readonly FieldProblem[] };

/** A job file that was opened: what stands in it, or why it cannot be read, a sentence each. */
export type ReadJob =
  | { readonly kind: "job"; readonly job: JobDraft }
  | { readonly kind: "unreadable"; readonly sentences: readonly string[] };

/** Which pictures of a plan are wanted. Finishes as the plan writes them. */
export interface PicturesWanted {
  readonly question: PlanQuestion;
  readonly plan: FinishPlan;
  readonly losses: readonly FinishLoss[];
  readonly title: string;
  readonly shown: readonly string[];
  readonly compared: readonly string[];
}

/** The same picture for a wide and for a narrow page. */
export interface TwoLayouts {
  readonly lying: string;
  readonly upright: string;
}

export interface Pictures {
  readonly lane: TwoLayouts;
  /** Null before the plan has chances to compare. */
  readonly plateau: string | null;
  readonly compare: TwoLayouts | null;
  /** Where the shots of the pick come in and what they leave; null before that is known, and for a ball that is not asked to strike. */
  readonly pins: { readonly strikes: string; readonly leaves: string; readonly meanings: readonly string[] } | null;
  /** A small ball for each finish of the plan. */
  readonly swatches: Readonly<Record<string, string>>;
  readonly hand: Hand;
  /** Today's finish on today's line against the pick on its own, for the customer; null where there is no pick or no line. */
  readonly change: CustomerChange | null;
}

/** What a bowler will notice, pick against today: feet, degrees and boards, positive is later, steeper, further in, higher. */
export interface CustomerChange {
  readonly hookLaterFt: number | null;
  readonly entrySteeperDeg: number | null;
  readonly laydownInBoards: number;
  readonly firstShotBoards: number | null;
}

/** A tester's file as it was read: drawn, in figures, in a line; `raUm` null for an area. Or why it cannot be read, a sentence each. */
export type ProfileSeen =
  | {
      readonly kind: "seen";
      /** Null for an area, which has no profile to draw. */
      readonly picture: string | null;
      readonly said: string;
      readonly rows: readonly (readonly [figure: string, value: string])[];
      readonly raUm: number | null;
      readonly rzUm: number | null;
      readonly rsmUm: number | null;
    }
  | { readonly kind: "unreadable"; readonly sentences: readonly string[] };

/** A pattern's oil: drawn, and in figures. Film in µm. */
export interface OilDrawn {
  readonly lane: TwoLayouts;
  readonly lengthFt: number;
  readonly volumeMl: number;
  readonly ratio: number;
  readonly meanUm: number;
  /** What the passes of an oil sheet add up to, and what the sheet itself states; null where there is none. */
  readonly laidMl: number | null;
  readonly statedMl: number | null;
  readonly statedRatio: number | null;
  /** Sections across the lane at some distances. */
  readonly across: TwoLayouts;
  /** The same at some boards, from the right edge. */
  readonly sections: {
    readonly boards: readonly number[];
    readonly rows: readonly { readonly ft: number; readonly um: readonly number[] }[];
  };
}

/** The pins that one shot left, and how often. */
export interface LeaveSeen {
  readonly pins: readonly number[];
  readonly count: number;
}

/** What was left, drawn, and what explains it. Sentences. */
export interface LeavesAnswer {
  /** Null where every shot was a strike. */
  readonly picture: string | null;
  readonly explained: readonly string[];
  readonly meanings: readonly string[];
}

/** Signed work on a ball. */
export interface PadWorkWanted {
  readonly name: string;
  readonly diameterIn: number;
  readonly stages: readonly PadStage[];
}

export interface PadWorkDrawn {
  readonly flat: TwoLayouts;
  /** Places of the engine's lattice, and the work at each over the mean. */
  readonly cells: number;
  readonly overMean: readonly number[];
  readonly seconds: readonly { readonly side: SideId; readonly seconds: number }[];
  /** How even it is, in a sentence. */
  readonly evenness: string;
}

/** A bag that has been read: the question it asks, or what is wrong with it. */
export type BagRequest =
  | { readonly kind: "question"; readonly question: BagQuestion; readonly defaults: readonly string[] }
  | { readonly kind: "problems"; readonly problems: readonly FieldProblem[] };

/** A lane in play that has been read: the question it asks, or what is wrong with it. */
export type TransitionRequest =
  | { readonly kind: "question"; readonly question: PlayQuestion; readonly defaults: readonly string[] }
  | { readonly kind: "problems"; readonly problems: readonly FieldProblem[] };

/** A lane in play, as laid first, then after some of its games. */
export interface PlayedLanes {
  readonly question: PlayQuestion;
  readonly lanes: readonly LaneNow[];
}

export interface PlayedGame {
  readonly title: string;
  readonly lane: TwoLayouts;
  readonly game: GameDocument;
}

/** What filmed shots tell of a bowler, or what is wrong with what was read off them. */
export type DeliveryMeasured =
  | { readonly kind: "measured"; readonly measured: BowlerMeasured }
  | { readonly kind: "problems"; readonly problems: readonly FieldProblem[] };

/** What may be wrong, or what is wrong with the question. */
export type Diagnosed =
  | { readonly kind: "diagnosis"; readonly diagnosis: Diagnosis }
  | { readonly kind: "problems"; readonly problems: readonly FieldProblem[] };

/** What the shots seen in a house tell of it, or what is wrong with the question. */
export type HouseAnswer =
  | {
      readonly kind: "told";
      readonly correction: Omit<Correction, "house">;
      /** Of each hand whose shots were seen. */
      readonly handNames: readonly string[];
      /** Whether the shots fit, and the name of each kind's ball. */
      readonly misfit: Misfit;
      readonly kindNames: readonly string[];
      /** What a plan takes in place of the ranges. */
      readonly house: JobHouse;
      /** Kinds of shot that would tell most next, most first. */
      readonly next: readonly { readonly ball: string; readonly shot: NextShot }[];
      readonly plans: readonly {
        readonly ball: string;
        readonly before: string | null;
        readonly after: string | null;
        /** Of a first shot with the pick to strike, by what is known now against before. */
        readonly change: number;
      }[];
    }
  | { readonly kind: "problems"; readonly problems: readonly FieldProblem[] };

/** A trial against the worlds, or what is wrong with the job it stands in. */
export type TrialAnswer =
  | { readonly kind: "told"; readonly trial: TrialInWorlds }
  | { readonly kind: "problems"; readonly problems: readonly FieldProblem[] };

/** What the page may ask of a worker, and what comes back. */
export type Call =
  | { readonly kind: "ask"; readonly job: unknown }
  | { readonly kind: "read"; readonly bytes: Uint8Array }
  | { readonly kind: "unit"; readonly unit: Unit }
  | { readonly kind: "pictures"; readonly wanted: PicturesWanted }
  | { readonly kind: "predict"; readonly wanted: PredictWanted }
  | { readonly kind: "padWork"; readonly wanted: PadWorkWanted }
  | { readonly kind: "profile"; readonly name: string; readonly bytes: Uint8Array; readonly options: MeasureOptions }
  | { readonly kind: "diagnose"; readonly file: unknown }
  | { readonly kind: "trial"; readonly job: unknown }
  | { readonly kind: "correctHouse"; readonly file: unknown }
  | { readonly kind: "askBag"; readonly file: unknown; readonly today: string }
  | { readonly kind: "bagPicture"; readonly plan: BagPlan }
  | { readonly kind: "measureDelivery"; readonly file: unknown }
  | { readonly kind: "askTransition"; readonly file: unknown }
  | { readonly kind: "playedGame"; readonly played: PlayedLanes; readonly title: string }
  | { readonly kind: "playedStrips"; readonly played: PlayedLanes }
  | { readonly kind: "oil"; readonly oil: unknown; readonly title: string }
  | { readonly kind: "leaves"; readonly seen: readonly LeaveSeen[]; readonly hand: Hand };

interface Replies {
  readonly ask: PlanRequest;
  readonly read: ReadJob;
  readonly unit: ResultOf<Unit>;
  readonly pictures: Pictures;
  readonly predict: Predicted | null;
  readonly padWork: PadWorkDrawn;
  readonly profile: ProfileSeen;
  readonly diagnose: Diagnosed;
  readonly trial: TrialAnswer;
  readonly correctHouse: HouseAnswer;
  readonly askBag: BagRequest;
  readonly bagPicture: TwoLayouts;
  readonly measureDelivery: DeliveryMeasured;
  readonly askTransition: TransitionRequest;
  readonly playedGame: PlayedGame;
  readonly playedStrips: TwoLayouts;
  readonly oil: OilDrawn;
  readonly leaves: LeavesAnswer;
}

export type ReplyTo<C extends Call> = Replies[C["kind"]];

export type Answer =
  | { readonly number: number; readonly reply: ReplyTo<Call> }
  | { readonly number: number; readonly failed: string; readonly problems: readonly FieldProblem[] | null };
