import type { Assumed, AssumptionId } from "../assumptions.ts";
import type { Ball } from "../ball/ball.ts";
import type { Bowler, Line } from "../delivery/bowler.ts";
import type { Lane } from "../lane/lane.ts";
import type { Finish } from "../surface/finish.ts";
import type { PadReading } from "./padReadings.ts";

/** Lines the bowler can play. Pairs are [least, most]. */
export interface Limits {
  readonly laydownBoard: readonly [number, number];
  readonly launchAngleDeg: readonly [number, number];
  readonly breakpointBoard: readonly [number, number];
}

/** Lines that most bowlers can play on most approaches: common practice. */
export const USUAL_LIMITS: Limits = { laydownBoard: [9, 36], launchAngleDeg: [-1.5, 4.5], breakpointBoard: [4, 39] };

/** Speed, mph, rev rate, rpm, and axis rotation, degrees. */
export type HandNumbers = readonly [number, number, number];

/** A house and a hand that may have thrown what was seen, in one of the ensemble's worlds. */
export interface LearnedWorld {
  /** Id of the world. */
  readonly world: number;
  /** Shares of all sum to one. */
  readonly weight: number;
  /** The house's own numbers, in the order of `NIGHT_IDS`. */
  readonly lane: readonly number[];
  /** In the mean, bowler by bowler. */
  readonly deliveries: readonly HandNumbers[];
}

/** What a house has taught: draws of some assumptions in the middle world, each row in the order of `ids`, from shots that were seen there. */
export interface HouseLearned {
  readonly ids: readonly AssumptionId[];
  /** At least one. */
  readonly draws: readonly (readonly number[])[];
  readonly shots: number;
  /** The same in worlds; not there in what was learned before there were any. */
  readonly inWorlds?: LearnedInWorlds;
}

/** What a house has taught in the worlds of an ensemble. */
export interface LearnedInWorlds {
  /** Its digest. */
  readonly ensemble: string;
  /** Whose hands they were: speed, rev rate and rotation as they were given. */
  readonly bowlers: readonly HandNumbers[];
  readonly worlds: readonly LearnedWorld[];
}

/** A shot of a trial: one ball on one line. */
export interface TrialShot {
  readonly finish: Finish;
  /** Where it met the pins, board from the bowler's hand side, and how well that could be read, standard deviation > 0. */
  readonly boardAtPins: number;
  readonly sdBoards: number;
  /** Its speed off the hand; null where nobody looked. */
  readonly speedMph: number | null;
}

/** Everything the finish plan is computed from. Nothing is left to a default here: `contract/` fills those in and lists them. */
export interface PlanQuestion {
  readonly seed: number;
  readonly bowler: Bowler;
  readonly ball: Ball;
  readonly lane: Lane;
  /** The line played today; null: the best line of today's finish. */
  readonly line: Line | null;
  readonly limits: Limits;
  /** Named candidates; null: the cover's usual range. */
  readonly candidates: readonly Finish[] | null;
  /** Why a candidate outside the cover's usual range is asked for; null if none is. */
  readonly outsideRangeReason: string | null;
  /** Assumptions set otherwise than the registry has them, by id: what a house has learned, or what somebody wants to try. */
  readonly assumptions: Readonly<Partial<Assumed>>;
  /** Shots that were seen with some finishes on `line`; empty: none. */
  readonly trial: readonly TrialShot[];
  /** What the shop's tester read on balls fresh from its bench; empty: nothing. */
  readonly readings: readonly PadReading[];
  /** Null where nothing has been learned of the house. It goes before `assumptions`. */
  readonly house: HouseLearned | null;
}

/** The mean of what a house has taught, as assumptions set otherwise. */
export function houseMeans(house: HouseLearned | null): Readonly<Partial<Assumed>> {
  if (house === null) return {};
  const { ids, draws } = house;
  return Object.fromEntries(ids.map((id, i) => [id, draws.reduce((sum, row) => sum + row[i], 0) / draws.length]));
}
