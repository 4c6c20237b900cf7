import type { Ball } from "../../ball/ball.ts";
import type { Bowler } from "../../delivery/bowler.ts";
import type { PatternSource } from "../../lane/lane.ts";
import type { BookId } from "../../rules/ruleBooks.ts";

/** What a bowler complains of. The words are in the catalogue. */
export const SYMPTOM_IDS = [
  "hooksEarlyHitsWeak",
  "doesNothing",
  "skidsPast",
  "leavesCorner",
  "comesInHigh",
  "hooksLess",
  "deflects",
  "neverTheSame",
  "spareBallHooks",
  "knocks",
  "looksShiny",
  "feelsOily",
] as const;
export type SymptomId = (typeof SYMPTOM_IDS)[number];

export const SINCE = ["suddenly", "slowly", "always", "unknown"] as const;
export type Since = (typeof SINCE)[number];

/** How the ball comes in at the pocket, where somebody has watched. */
export const HITS = ["good", "light", "high", "unknown"] as const;
export type Hits = (typeof HITS)[number];

/** When the ball is at hand: what may be done to it depends on that. */
export const WHEN = ["scoring", "practice", "afterwards", "unknown"] as const;
export type When = (typeof WHEN)[number];

/** Everything that is asked of a complaint. Null: nobody knows. */
export interface Complaint {
  readonly symptoms: readonly SymptomId[];
  /** Did all balls change, or only this one? */
  readonly changed: "all" | "one" | "unknown";
  readonly since: Since;
  readonly hits: Hits;
  readonly when: When;
  /** Whose rules are played by; null: not asked. */
  readonly book: BookId | null;
  /** With the finish it was last given. */
  readonly ball: Ball;
  readonly use: BallUse;
  readonly bowler: Bowler;
  readonly release: ReleaseNow;
  readonly lane: LaneNow;
}

export interface BallUse {
  /** Games on the finish. */
  readonly games: number | null;
  readonly gamesSinceExtraction: number | null;
  /** Readings in the track and beside it, µin. */
  readonly trackMicroinch: number | null;
  readonly besideMicroinch: number | null;
  readonly crack: boolean;
  /** Somebody has looked for one: there is none. */
  readonly noCrack: boolean;
  readonly hollowSound: boolean;
  readonly plug: boolean;
  readonly flatSpot: boolean;
  readonly wornTrack: boolean;
  /** A warranty question may be open. */
  readonly claimOpen: boolean;
}

export interface ReleaseNow {
  /** Measured now against before, where both are known. */
  readonly speedChangeMph: number | null;
  readonly revChangeRpm: number | null;
  readonly grip: "changed" | "hurts" | "same" | null;
  readonly tired: boolean | null;
}

export interface LaneNow {
  /** Null: nobody knows; then every named pattern is as likely. */
  readonly pattern: PatternSource | null;
  /** Shots that all have played on this oil when it happens; null: nobody knows. */
  readonly playedShots: number | null;
  readonly otherHouse: boolean | null;
  /** Known to have changed: machine, oil, boards. */
  readonly known: boolean | null;
}

export const NOTHING_KNOWN: Omit<Complaint, "symptoms" | "ball" | "bowler" | "lane"> = {
  changed: "unknown",
  since: "unknown",
  hits: "unknown",
  when: "unknown",
  book: null,
  use: {
    games: null,
    gamesSinceExtraction: null,
    trackMicroinch: null,
    besideMicroinch: null,
    crack: false,
    noCrack: false,
    hollowSound: false,
    plug: false,
    flatSpot: false,
    wornTrack: false,
    claimOpen: false,
  },
  release: { speedChangeMph: null, revChangeRpm: null, grip: null, tired: null },
};
