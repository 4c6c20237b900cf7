import type { Ball } from "../../ball/ball.ts";
import type { Line } from "../../delivery/bowler.ts";
import type { FilmMap } from "../../lane/filmMap.ts";
import type { Leave } from "../../pins/leave.ts";

/** Earlier or later than was to be expected, as the eye sees it; and where it came in. */
export const TURNED = ["early", "right", "late"] as const;
export const ARRIVED = ["light", "flush", "high"] as const;
export type Turned = (typeof TURNED)[number];
export type Arrived = (typeof ARRIVED)[number];

/** What was seen of one shot; null or empty where it was not. Boards from the bowler's hand side. */
export interface ShotSeen {
  readonly boards: readonly { readonly atFt: number; readonly board: number }[];
  readonly breakpointBoard: number | null;
  readonly breakpointFt: number | null;
  readonly boardAtPins: number | null;
  readonly speedMph: number | null;
  /** Where the speed was taken: at the foul line or near the pins. */
  readonly speedAt: "launch" | "pins";
  readonly turned: Turned | null;
  readonly arrived: Arrived | null;
  /** Pins left, as the bowler sees them; `STRIKE` for none. */
  readonly leave: Leave | null;
}

/** Shots thrown alike: one hand, one ball in one state on one film, along one line that was meant. */
export interface SituationSeen {
  /** Which of the bowlers whose shots were seen. */
  readonly hand: number;
  readonly ball: Ball;
  /** The film as the bowler sees it: a left-hander's is mirrored. */
  readonly film: FilmMap;
  readonly line: Line;
  /** False where the line was not noted and is only the likeliest: shots then scatter about it much wider. */
  readonly isLineKnown: boolean;
  readonly shots: readonly ShotSeen[];
}

/** How far an eye may be out: standard deviations. All **chosen**; the file may say otherwise. */
export interface Eye {
  readonly arrowsBoards: number;
  readonly breakpointBoards: number;
  readonly breakpointFt: number;
  readonly pinsBoards: number;
  readonly speedMph: number;
  /** Of the distance at which a ball is seen to turn. */
  readonly turnFt: number;
}

export const USUAL_EYE: Eye = { arrowsBoards: 0.5, breakpointBoards: 1, breakpointFt: 3, pinsBoards: 0.6, speedMph: 0.25, turnFt: 2 };

/** Up to here from the foul line a board is read as well as at the arrows; beyond, as at the breakpoint. */
export const ARROWS_TO_FT = 20;
/** A turn within so many feet of the expected is "right". */
export const RIGHT_FT = 2;
/** Where "flush" ends on either side, boards at the pins: common practice, 17.5 and about three quarters of a board. */
export const FLUSH: readonly [number, number] = [16.75, 18.25];
