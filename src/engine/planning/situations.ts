import type { CoverId } from "../ball/ball.ts";
import type { Bowler } from "../delivery/bowler.ts";
import { TYPICAL_SPREAD } from "../delivery/words.ts";
import type { PatternId } from "../lane/patterns.ts";

/**
 * Bowlers as the trade speaks of them; common practice, the numbers our own. The first is the one against whom lanes wear in every "burnt" case.
 */
export const STYLES = {
  matched: style(17.5, 320, 45, 14),
  speedDominant: style(19.5, 250, 35, 15),
  revDominant: style(16.5, 420, 45, 10),
  elite: style(18.5, 450, 50, 12, 0.2),
  slowWithMuchHand: style(14, 380, 55, 10),
} as const satisfies Record<string, Bowler>;

export type StyleId = keyof typeof STYLES;

function style(
  speedMph: number,
  revRateRpm: number,
  axisRotationDeg: number,
  axisTiltDeg: number,
  launchAngleDeg = TYPICAL_SPREAD.launchAngleDeg,
): Bowler {
  return { name: "", hand: "right", speedMph, revRateRpm, axisRotationDeg, axisTiltDeg, spread: { ...TYPICAL_SPREAD, launchAngleDeg } };
}

/** What the trade puts on whose ball on which lane: the answer is an interval of finishes, as roughness from dull to smooth. */
export interface Situation {
  readonly style: StyleId;
  readonly cover: CoverId;
  readonly pattern: PatternId;
  /** Shots of the matched bowler already on it. */
  readonly playedShots: number;
  readonly from: string;
  readonly to: string;
}

/** All common practice, no source. */
export const SITUATIONS: readonly Situation[] = [
  { style: "matched", cover: "solid", pattern: "medium-41", playedShots: 0, from: "1000", to: "3000" },
  { style: "matched", cover: "hybrid", pattern: "medium-41", playedShots: 20, from: "2000", to: "3000" },
  { style: "speedDominant", cover: "solid", pattern: "heavy-44", playedShots: 0, from: "500", to: "1000" },
  { style: "revDominant", cover: "solid", pattern: "light-38", playedShots: 0, from: "3000", to: "4000 + polish" },
  { style: "matched", cover: "urethane", pattern: "medium-41", playedShots: 0, from: "500", to: "1000" },
  { style: "elite", cover: "pearl", pattern: "medium-41", playedShots: 60, from: "3000", to: "4000 + polish" },
  { style: "revDominant", cover: "hybrid", pattern: "medium-41", playedShots: 60, from: "3000", to: "4000 + polish" },
  { style: "speedDominant", cover: "solid", pattern: "medium-41", playedShots: 0, from: "500", to: "2000" },
  { style: "matched", cover: "solid", pattern: "heavy-44", playedShots: 0, from: "500", to: "2000" },
  { style: "matched", cover: "hybrid", pattern: "medium-41", playedShots: 0, from: "2000", to: "3000" },
  { style: "matched", cover: "pearl", pattern: "medium-41", playedShots: 0, from: "2000", to: "4000" },
  { style: "revDominant", cover: "hybrid", pattern: "medium-41", playedShots: 0, from: "3000", to: "4000 + polish" },
  { style: "matched", cover: "pearl", pattern: "light-38", playedShots: 0, from: "3000", to: "4000 + polish" },
  { style: "speedDominant", cover: "hybrid", pattern: "heavy-44", playedShots: 0, from: "500", to: "2000" },
];
