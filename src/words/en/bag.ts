import type { BagMessageId, BagReasonId } from "#engine/planning/bag/bagPlan";
import { degrees, feet, fixed, inHundred, launchAngle } from "../figures.ts";
import type { Sentence } from "../params.ts";

const strikes = (count: number) => `${fixed(count, 1)} ${fixed(Math.abs(count), 1) === "1.0" ? "strike" : "strikes"}`;

/** Why one ball and not the next best, as one would see it from the approach; each ball on its own line. */
const REASONS: Readonly<Record<BagReasonId, Sentence>> = {
  "bag.earlier": (p) => `it hooks ${feet(p.number("feet"))} earlier`,
  "bag.later": (p) => `it hooks ${feet(p.number("feet"))} later`,
  "bag.steeper": (p) => `it enters ${degrees(p.number("degrees"))} steeper`,
  "bag.flatter": (p) => `it enters ${degrees(p.number("degrees"))} flatter`,
  "bag.runnerUpHasNoLine": () => "the other has no sensible line there",
  "bag.alike": () => "nobody would see a difference from the approach",
  "bag.staysToSaveAChange": () =>
    "the other would do better there, but by less than it costs: in work, in a change of ball, or where the model is wrong",
};

const MESSAGES: Readonly<Record<BagMessageId, Sentence>> = {
  "bag.onlyAside": () => "No ball here is meant to strike: spare and house balls are left out of the plan.",
  "bag.noLine": () => "No ball of this bag has a sensible line on this oil, however it is worked.",
  "bag.noWorkIsAsGood": (p) =>
    `Doing nothing to the balls is as good as makes no difference: the work brings ${strikes(p.number("strikes"))}.`,
  "bag.oneBallIsAsGood": (p) =>
    `${p.text("ball")} all through is as good as makes no difference: the changes bring ${strikes(p.number("strikes"))}, after what they cost.`,
  "bag.workAsk": () => "No rule on work before the session was read: ask the organiser.",
  "bag.practiceNotAllowed": (p) => `No abrasive in practice is planned: the rules say “${p.text("answer")}”.`,
  "bag.betweenNotAllowed": (p) => `No abrasive between games is planned: the rules say “${p.text("answer")}”.`,
  "bag.overlap": (p) =>
    `${p.text("first")} and ${p.text("second")} do the same on the first oil: one of them could stay at home, or be worked apart.`,
  "bag.gap": (p) =>
    `A gap in game ${fixed(p.number("game"), 0)}: an ordinary ${p.text("cover")} at ${p.text("finish")} would strike ${inHundred(p.number("points"))} more than the best of the bag.`,
  "bag.gapAtNone": () => "No gap: no ordinary ball of a cover that the bag lacks would do better by two strikes in a hundred.",
  "bag.ownWear": () =>
    "Most of the shots on this lane are the bowler's own: the oil was played twice, the second time with the balls chosen.",
};

export const BAG_SENTENCES: Readonly<Record<string, Sentence>> = { ...REASONS, ...MESSAGES };

const changesOfBall = (count: number) =>
  count === 0 ? "no change of ball" : count === 1 ? "one change of ball" : `${count} changes of ball`;

/** The report of a bag plan. */
export const BAG = {
  title: "The bag through the session",
  heading: (bowler: string, balls: number, games: number) =>
    `${bowler}: ${balls === 1 ? "one ball" : `${balls} balls`}, ${games === 1 ? "one game" : `${games} games`}`,
  strikes: (value: number, low: number, high: number, frames: number) =>
    `${fixed(value, 1)} strikes (${fixed(low, 1)}–${fixed(high, 1)}) in ${fixed(frames, 0)} first balls`,
  changes: changesOfBall,
  sure: { sure: "sure", likely: "likely", unsure: "not sure" },
  sureText: (share: number) => `as good as the best under ${fixed(100 * share, 0)} of 100 draws of what is assumed`,
  beforehand: "Beforehand",
  nothingBeforehand: "Nothing: every ball goes as it lies.",
  work: (ball: string, from: string, to: string, minutes: number) =>
    `${ball}: ${from} → ${to}, about ${fixed(minutes, 0)} min on the bench`,
  byHand: (ball: string, number: number, game: number, minutes: number) =>
    game === 1
      ? `${ball}: a dry ${number} pad by hand in practice, about ${fixed(minutes, 0)} min`
      : `${ball}: a dry ${number} pad by hand before game ${game}, about ${fixed(minutes, 0)} min`,
  stay: (balls: readonly string[]) => `Stay in the bag: ${balls.join(", ")}.`,
  aside: (balls: readonly string[]) => `Left out, not meant to strike: ${balls.join(", ")}.`,
  asItLies: (finish: string) => `${finish} as it lies`,
  through: "Through the session",
  stretch: (ball: string, finish: string, from: string, to: string) =>
    from === to ? `${from}: ${ball}, ${finish}` : `${from} to ${to}: ${ball}, ${finish}`,
  place: (game: number, part: number, parts: number) => (parts === 1 ? `game ${game}` : `game ${game}.${part}`),
  against: (ball: string, finish: string, gain: number, low: number, high: number) =>
    `against ${ball}, ${finish}: ${gain < 0 ? "" : "+"}${fixed(gain, 1)} strikes (${fixed(low, 1)} to ${fixed(high, 1)})`,
  columns: {
    when: ["", ""],
    ball: ["ball", ""],
    line: ["line", ""],
    hook: ["hook", "ft"],
    entry: ["entry", "deg"],
    chance: ["strikes", "in 100"],
    oil: ["oil", "mL"],
  },
  line: (board: number, launchDeg: number) => `${fixed(board, 0)}, ${launchAngle(launchDeg, 1)}`,
  without: (ball: string, value: number, low: number, high: number) =>
    value <= 0.05
      ? `Without ${ball}: nothing lost to speak of (${fixed(low, 1)} to ${fixed(high, 1)}).`
      : `Without ${ball}: ${strikes(value)} fewer (${fixed(low, 1)} to ${fixed(high, 1)}).`,
  noWork: (value: number, low: number, high: number) => `The work brings ${strikes(value)} (${fixed(low, 1)} to ${fixed(high, 1)}).`,
  oneBall: (ball: string, finish: string, value: number, low: number, high: number) =>
    `Against ${ball} at ${finish} all through: ${value < 0 ? "" : "+"}${fixed(value, 1)} strikes (${fixed(low, 1)} to ${fixed(high, 1)}).`,
  mostPossible: (value: number, low: number, high: number, minutes: number, changes: number) =>
    `The most that work and changes could bring: ${strikes(value)} (${fixed(low, 1)} to ${fixed(high, 1)}), with ${fixed(minutes, 0)} min of work and ${changesOfBall(changes)}.`,
  assumed:
    "Others on the lane, wear and carry are assumed, not measured; their ranges go with the data, the law is docs/model/bag-plan.md.",
  /** The picture. */
  chartHook: "hook starts, ft",
  chartEntry: "entry angle, deg",
  chartNote: "each ball on its own line; from the first oil (textured) to the last (ring)",
  chartGame: (game: number) => `game ${game}`,
  chartDescription: (rows: readonly string[]) =>
    `Balls of the bag by where they begin to hook and how steeply they enter. ${rows.join(" ")}`,
  chartRow: (ball: string, finish: string, hookFt: number, entryDeg: number) =>
    `${ball}, ${finish}: ${feet(hookFt)}, ${degrees(entryDeg)}.`,
} as const;
