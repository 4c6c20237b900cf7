import type { BallJob, CoverId } from "../ball/ball.ts";
import type { SpeedClass } from "../delivery/style.ts";
import type { Finish } from "../surface/finish.ts";

export type OilClass = "light" | "medium" | "heavy";

/** What is known before anything is computed: a rule of thumb speaks from this alone. */
export interface RuleCase {
  /** Null where nobody knows it: a rule of one cover then says nothing. */
  readonly cover: CoverId | null;
  readonly job: BallJob;
  readonly speedClass: SpeedClass;
  readonly speedMph: number;
  readonly oil: OilClass;
  readonly playedShots: number;
  readonly lengthFt: number;
}

/** What was computed: a rule is held against this. */
export interface RuleAnswer {
  /** Null where there is none. */
  readonly pick: Finish | null;
  /** Finishes as good as the best; empty where there is no pick. */
  readonly plateau: readonly Finish[];
  /** Hook start of every candidate on one and the same line. */
  readonly onOneLine: readonly { readonly finish: Finish; readonly hookStartFt: number | null }[];
  /** Board at which the picked finish's line leaves the oil. */
  readonly exitBoard: number | null;
}

/** Volumes that part light, medium and heavy, mL: common practice, between the named patterns. */
const MEDIUM_FROM_ML = 21;
const HEAVY_FROM_ML = 28;
/** Shots after which the trade calls a lane in transition, and burnt. */
export const TRANSITION_FROM = 15;
export const BURNT_FROM = 50;

export function oilClass(volumeMl: number): OilClass {
  if (volumeMl < MEDIUM_FROM_ML) return "light";
  return volumeMl < HEAVY_FROM_ML ? "medium" : "heavy";
}
