import type { Line } from "../../delivery/bowler.ts";
import type { Message } from "../../message.ts";
import type { SurfaceAnswer } from "../../rules/events.ts";
import type { AssumptionUse, Interval } from "../plan.ts";
import type { Worked } from "./states.ts";

/** One stage of the session: which ball, on which line, and what it does there. */
export interface BagStage extends Worked {
  readonly game: number;
  /** Which part of the game, 1 … of so many. */
  readonly part: number;
  readonly ball: string;
  readonly line: Line | null;
  readonly hookStartFt: number | null;
  readonly entryAngleDeg: number | null;
  /** Strikes in a hundred first balls, 0–1. */
  readonly chance: Interval;
  /** Oil left on the lane, mL. */
  readonly oilMl: number;
}

/** What is done to a ball, and what it is in the bag for. */
export interface BagBallPlan extends Worked {
  readonly name: string;
  /** Null where nobody knows it. */
  readonly cover: string | null;
  readonly today: string;
  readonly minutes: number;
  /** One dry pad by hand at the lane, in practice (before game 1) or before another game. */
  readonly byHand: { readonly beforeGame: number; readonly number: number; readonly minutes: number } | null;
  readonly role: "thrown" | "notNeeded" | "aside";
  readonly stages: number;
  /** Strikes over the session that would be lost without it; null where it is not thrown, or nothing else could be. */
  readonly lostWithout: Interval | null;
  /** On the oil as the first stage finds it and as the last does, each on its own line; null without one. */
  readonly atFirst: BagPlace | null;
  readonly atLast: BagPlace | null;
}

/** Where a ball lies on the axes that physics gives. */
export interface BagPlace {
  readonly hookStartFt: number;
  readonly entryAngleDeg: number;
  readonly chance: number;
}

/** A stretch of stages with one ball, against the ball that would do next best there. */
export interface BagStretch extends Worked {
  readonly fromStage: number;
  readonly toStage: number;
  readonly ball: string;
  readonly runnerUp: RunnerUp | null;
  /** Strikes over the stretch that the choice gains on it. */
  readonly gain: Interval | null;
  readonly reasons: readonly Message<BagReasonId>[];
}

/** The ball that would do next best over a stretch, as it would best be worked, and what it does in the middle of it. */
export interface RunnerUp extends Worked {
  readonly ball: string;
  readonly hookStartFt: number | null;
  readonly entryAngleDeg: number | null;
}

export const BAG_REASONS = [
  "bag.earlier",
  "bag.later",
  "bag.steeper",
  "bag.flatter",
  "bag.runnerUpHasNoLine",
  "bag.alike",
  "bag.staysToSaveAChange",
] as const;
export type BagReasonId = (typeof BAG_REASONS)[number];

/** What an ordinary ball of a cover that is not in the bag would add at a stage. */
export interface BagGap {
  readonly stage: number;
  readonly cover: string;
  readonly finish: string;
  /** Strikes in a hundred more than the best of the bag. */
  readonly points: number;
}

export const BAG_MESSAGES = [
  "bag.onlyAside",
  "bag.noLine",
  "bag.noWorkIsAsGood",
  "bag.oneBallIsAsGood",
  "bag.workAsk",
  "bag.practiceNotAllowed",
  "bag.betweenNotAllowed",
  "bag.overlap",
  "bag.gap",
  "bag.gapAtNone",
  "bag.ownWear",
] as const;
export type BagMessageId = (typeof BAG_MESSAGES)[number];

export interface BagPlan {
  readonly metric: "expectedStrikes";
  /** First balls counted. */
  readonly frames: number;
  /** Expected strikes over the session, without what changes cost. */
  readonly strikes: Interval | null;
  readonly changes: number;
  readonly stages: readonly BagStage[];
  readonly balls: readonly BagBallPlan[];
  readonly stretches: readonly BagStretch[];
  /** Strikes that the plan gains on doing no work, and on one ball all through. */
  readonly againstNoWork: Interval | null;
  readonly againstOneBall: (Worked & { readonly ball: string; readonly gain: Interval }) | null;
  /** What the best mean of all would bring on top, and what it takes; null where it is this plan. */
  readonly mostPossible: { readonly gain: Interval; readonly minutes: number; readonly changes: number } | null;
  readonly sure: "sure" | "likely" | "unsure";
  readonly sureShare: number;
  readonly gaps: readonly BagGap[];
  readonly surfaceWord: { readonly before: SurfaceAnswer; readonly practice: SurfaceAnswer; readonly betweenGames: SurfaceAnswer };
  readonly minutes: number;
  readonly messages: readonly Message<BagMessageId>[];
  readonly assumptions: readonly AssumptionUse[];
}
