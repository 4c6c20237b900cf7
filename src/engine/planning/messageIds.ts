import type { CautionId } from "../rules/cautions.ts";
import type { RuleId } from "../rules/rulesOfThumb.ts";

/** Said in place of a pick, or beside it. Parameters in brackets. */
export const PLAN_MESSAGES = [
  /** The finish makes no difference here. [finishes: number, points] */
  "message.noMatter",
  /** The same for a ball that is to hook least. [finishes: number, boards] */
  "message.noMatterOfHook",
  /** The chance still rises at the edge of the cover's range: another ball. [finish, direction: duller|smoother, points] */
  "message.coverAtLimit.duller",
  "message.coverAtLimit.smoother",
  /** No line within the limits is any good; how the ball fails from the widest of them. [laydownBoard, launchAngleDeg] */
  "message.noLine.hooksTooMuch",
  "message.noLine.hooksTooLittle",
  /** Wider limits would find one. [laydownBoard, launchAngleDeg] */
  "message.noLine.limits",
  "message.noLine.tooSlow",
  /** The mean shot comes to the pocket, but too few of the scattered ones strike. [entryDeg, deadOnPercent] */
  "message.noLine.scattered",
  /** A backup ball: everything counts from the other edge than the bowler's. [side: left|right] */
  "message.backup",
  /** With no finish does the ball hook: it slides on oil all the way, or the hand gives it no turn. */
  "message.slidesThrough",
  "message.noTurn",
  /** The ball lies outside the governing body's limits. [quantity] */
  "message.outsideRuleBook",
  /** One candidate compares with nothing. [finish] */
  "message.onlyOne",
  /** Today's finish is on the plateau. [today] */
  "message.todayIsAsGood",
  /** The pick's line is at the edge of the limits. [finish, laydownBoard, launchAngleDeg] */
  "message.lineAtLimit",
  /** The same where pins are counted. [finishes: number, pins] */
  "message.noMatterOfPins",
  /** Pins are counted, for strikes are too rare to tell finishes apart. [] */
  "message.expectedPins",
  /** Least hook is the aim, the strike chance is not. [] */
  "message.leastHook",
  /** Least change over the lane's states is the aim. [] */
  "message.leastChange",
  /** Nobody knows the cover: the plan is over all that it may be. [covers] */
  "message.coverUnknown",
  /** Nobody knows today's finish: nothing is compared with it, and one is assumed for the oil that was played away. [finish, shots: number] */
  "message.finishUnknown",
  /** Whatever the finish it rolls before the middle of the lane: less ball is the answer. [feet] */
  "message.rollsEarly",
  /** What a measurement would add to the pick, in strikes in a hundred. [points] */
  "message.measure.tenBalls",
  "message.measure.trial",
  "message.measure.speeds",
  /** The plan uses what this house has taught. [shots: number] */
  "message.houseLearned",
  /** The worlds are weighed by what was read on balls fresh from the bench. [readings: number] */
  "message.padReadings",
  /** What the house has taught was learned in other worlds than those in use; only its middle is taken. */
  "message.houseOtherWorlds",
  /** The worlds do not say what was seen in the trial. */
  "message.trialUnsaid",
  /** The worlds do not say what was read on the bench. */
  "message.readingsUnsaid",
] as const;

export const PLAN_REASONS = [
  /** [finish, chancePercent] */
  "reason.bestChance",
  /** [finish, boards] */
  "reason.leastHook",
  /** [finish, pins] */
  "reason.pinsDown",
  /** [from, to] */
  "reason.plateau",
  /** [finish, points] what the dullest, or the smoothest, candidate loses */
  "reason.dullLoses",
  "reason.smoothLoses",
  /** [dullFinish, dullEntryDeg, smoothFinish, smoothEntryDeg] */
  "reason.entryRises",
  "reason.entryFalls",
  /** [finish, points, pickFinish, pickPoints] lost by half a degree */
  "reason.lessForgiving",
  /** [finish, slipMps] */
  "reason.slipLeft",
  /** [today, pick, feet] hook starts later (feet > 0) or earlier than with today's finish */
  "reason.hookLater",
  "reason.hookEarlier",
  /** [pick, boards, laydownBoard, launchAngleDeg] on today's line it hits so many boards higher or lighter */
  "reason.todaysLineHigher",
  "reason.todaysLineLighter",
  /** [today, points] */
  "reason.todayLoses",
] as const;

/** Why the computation departs from a rule of thumb. */
export const RULE_WHYS = [
  /** [pick, roomDeg, entryDeg] */
  "why.smootherStillHooks",
  /** [pick, smoothFinish, roomDeg, pickRoomDeg] */
  "why.dullerKeepsWindow",
  /** [exitBoard, ruleBoard] */
  "why.exitBoard",
  "why.ordering",
  /** [pick] */
  "why.urethane",
  /** Something as good as the pick lies in the rule's range. [pick, from, to] */
  "why.plateauReaches",
] as const;

export type PlanMessageId =
  | (typeof PLAN_MESSAGES)[number]
  | (typeof PLAN_REASONS)[number]
  | (typeof RULE_WHYS)[number]
  | `rule.${RuleId}`
  | `caution.${CautionId}`;
