import type { Hand } from "../delivery/bowler.ts";

export type Phase = "skid" | "hook" | "roll";

export interface CoursePoint {
  readonly yFt: number;
  /** From the bowler's hand side, fractional; below 0.5 or above 39.5 is off the lane. */
  readonly board: number;
  readonly phase: Phase;
}

/** The drawn course of one ball from the foul line to the head pin: what a chart needs and no more. */
export interface Course {
  readonly hand: Hand;
  readonly points: readonly CoursePoint[];
  readonly hookStartFt: number | null;
  readonly rollStartFt: number | null;
  readonly breakpoint: { readonly board: number; readonly yFt: number };
  /** Ball's centre at 59.5 ft; null if the ball left the lane before. */
  readonly boardAtPins: number | null;
  readonly entryAngleDeg: number | null;
}
