import { BOARD } from "../lane/geometry.ts";
import { DEGREE, FOOT } from "../units.ts";
import { ARROWS_FT, type Arrow } from "./arrows.ts";

export type Hand = "right" | "left";

/** A bowler's own variation from shot to shot: standard deviations, all ≥ 0. */
export interface Spread {
  readonly launchAngleDeg: number;
  readonly laydownBoards: number;
  readonly speedMph: number;
  readonly revRateRpm: number;
  readonly axisRotationDeg: number;
}

/** How well a bowler's mean numbers are known: standard deviations, > 0. */
export interface DeliveryKnown {
  readonly speedMph: number;
  readonly revRateRpm: number;
  readonly axisRotationDeg: number;
  readonly axisTiltDeg: number;
}

/** What the bowler gives the ball. Axis rotation 0 is forward roll, 90° side roll; tilt is the axis' angle above the floor. */
export interface Bowler {
  readonly name: string;
  readonly hand: Hand;
  readonly speedMph: number;
  readonly revRateRpm: number;
  readonly axisRotationDeg: number;
  readonly axisTiltDeg: number;
  readonly spread: Spread;
  /** Of the numbers that nobody measured, how well they are known; what is not there was measured. */
  readonly known?: Partial<DeliveryKnown>;
  /** Over which arrow the ball goes today; not there where nobody said. */
  readonly plays?: Arrow;
  /** A backup ball, taken as the hook of the hand that stands here: that is the other one than the bowler's. */
  readonly isBackup?: true;
}

/** Where the ball is laid down and where it is sent. Boards from the bowler's hand side, angle positive outward. */
export interface Line {
  readonly laydownBoard: number;
  readonly launchAngleDeg: number;
}

/** The board over which a ball on a line passes the arrows: up to there it skids, it goes as it was sent. */
export function targetBoard({ laydownBoard, launchAngleDeg }: Line): number {
  return laydownBoard - (Math.tan(launchAngleDeg * DEGREE) * ARROWS_FT * FOOT) / BOARD;
}
