import type { Line } from "../delivery/bowler.ts";
import type { Message } from "../message.ts";
import type { Metric } from "./metric.ts";

export interface Interval {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

/** Strikes lost, 0–1, when the middle of the bowler's shots is off by one board of laydown, half a degree of launch, or one mile an hour. */
export interface MissLoss {
  readonly board: number;
  readonly halfDegree: number;
  readonly mph: number;
}

/** How a bowler moves from one line to another, boards: feet at the foul line and target at the arrows, positive inward. */
export interface Move {
  readonly feetBoards: number;
  readonly targetBoards: number;
}

/** A finish on the line that is played today, without any move. */
export interface OnTodaysLine {
  readonly boardAtPins: number;
  /** Against today's finish on the same line: positive ends higher. */
  readonly boardChange: number;
  readonly entryAngleDeg: number;
  /** Against today's finish: positive hooks later. Null where one of the two does not hook before the pins. */
  readonly hookStartChangeFt: number | null;
  /** Of a strike, the line held through the session; null where strikes are not what is counted. */
  readonly chance: Interval | null;
  /** From today's line to the finish's own; null where it has none. */
  readonly move: Move | null;
}

/** The first ball: pins down on average, and what is left standing when it is no strike, as the bowler sees it. */
export interface PinsLeft {
  readonly strike: number;
  readonly pinsDown: number;
  /** The likeliest leaves, commonest first, as `2-8-10`. */
  readonly leaves: readonly { readonly leave: string; readonly share: number }[];
  readonly other: number;
}

/** One finish on a near-best line with it. Null where there is none: no sensible line, or no roll before the pins. */
export interface Candidate {
  readonly finish: string;
  readonly effectiveRaUm: number;
  readonly line: Line | null;
  readonly boardAtPins: number | null;
  readonly entryAngleDeg: number | null;
  readonly hookStartFt: number | null;
  readonly rollStartFt: number | null;
  readonly slipAtPinsMps: number | null;
  readonly speedAtPinsMph: number | null;
  /** Of a strike, 0–1: mean over the session and the worlds; the interval holds nine worlds of ten. Null where strikes are not what is counted. */
  readonly chance: Interval | null;
  /** Pins down with the first ball, for who rarely strikes; else null. */
  readonly expectedPins: Interval | null;
  readonly missLoss: MissLoss | null;
  /** What the pins do on that line, on the lane as found; null while that has not been worked out. */
  readonly pins: PinsLeft | null;
  /** Games until the surface in the track is half a step of the ladder off; null for one that stays as it is; 200 stands for 200 or more. */
  readonly keepsGames: Interval | null;
  readonly onTodaysLine: OnTodaysLine | null;
}

export interface Pick {
  readonly finish: string;
  /** Finishes that cannot be told apart from the best, dullest first. */
  readonly plateau: readonly string[];
  /** The side on which the chance falls off faster, or null. */
  readonly cliff: "smoother" | "duller" | null;
  readonly sure: "sure" | "likely" | "unsure";
  /** Share of the worlds in which the best of these is within two strikes in a hundred of the best of all: its lower limit, 90 % sure. */
  readonly sureShare: number;
}

/** The answer. Finishes are ordered from dull to smooth. */
export interface FinishPlan {
  readonly metric: Metric;
  /** The ensemble of worlds that it was computed over, by its digest, and how many of them. */
  readonly ensemble: string;
  readonly worlds: number;
  /** The finish of today, as text, and the line it is played on; both null where nobody knows what is on the ball. */
  readonly today: { readonly finish: string | null; readonly line: Line | null };
  readonly candidates: readonly Candidate[];
  readonly pick: Pick | null;
  /** In place of a pick, or beside it. */
  readonly messages: readonly Message[];
  readonly reasons: readonly Message[];
  readonly rules: readonly RuleVerdict[];
  readonly assumptions: readonly AssumptionUse[];
  readonly cautions: readonly Message[];
}

/** A rule of thumb that speaks to this case, and whether the computation agrees with it. */
export interface RuleVerdict {
  readonly rule: string;
  readonly agrees: boolean;
  readonly message: Message;
  /** Where it disagrees: why. */
  readonly why: Message | null;
}

export interface AssumptionUse {
  readonly id: string;
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly unit: string;
  readonly mark: string;
  readonly source: string;
}
