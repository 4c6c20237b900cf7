import type { Line } from "../delivery/bowler.ts";
import type { Message } from "../message.ts";

export interface Interval {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

/** How far one thing alone may vary, full width, and the shot still strikes more often than not. */
export interface MissRoom {
  readonly launchAngleDeg: number;
  readonly speedMph: number;
  readonly boards: number;
}

/** The first ball: pins down on average, and what is left standing when it is no strike, as the bowler sees it. */
export interface PinsLeft {
  readonly strike: number;
  readonly pinsDown: number;
  /** The likeliest leaves, commonest first, as `2-8-10`. */
  readonly leaves: readonly { readonly leave: string; readonly share: number }[];
  readonly other: number;
}

/** One finish on the bowler's best line with it. Null where there is none: no sensible line, or no roll before the pins. */
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
  /** Mean over the session, 0–1; the interval is over the assumptions. */
  readonly chance: Interval | null;
  readonly missRoom: MissRoom | null;
  /** What the pins do on that line, on the lane as found; null while that has not been worked out. */
  readonly pins: PinsLeft | null;
  /** Games that it stays as good as makes no difference: until the track has left the plateau, half a step of the ladder allowed. Null off the plateau; 200 stands for 200 or more. */
  readonly keepsGames: Interval | null;
  readonly onTodaysLine: { readonly boardAtPins: number; readonly boardChange: number; readonly entryAngleDeg: number } | null;
}

export interface Pick {
  readonly finish: string;
  /** Finishes that are as good as makes no difference, dullest first. */
  readonly plateau: readonly string[];
  /** The side on which the chance falls off faster, or null. */
  readonly cliff: "smoother" | "duller" | null;
  readonly sure: "sure" | "likely" | "unsure";
  /** Share of the draws of the assumptions in which the pick is within two points of the best. */
  readonly sureShare: number;
}

/** The answer. Finishes are ordered from dull to smooth. */
export interface FinishPlan {
  readonly metric: "strikeChance";
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
