import type { Bowler } from "../delivery/bowler.ts";
import { release } from "../delivery/release.ts";
import { PINS_PLANE, xToBoard } from "../lane/geometry.ts";
import { type AveragedRun, runAveraged } from "../motion/averaged.ts";
import type { Thrower } from "../motion/track.ts";
import type { HitQuality } from "../pins/carryGrid.ts";
import { DEGREE, MPH } from "../units.ts";

/** A ball that does not reach the pins is put here, boards: far from every target, and finite. */
export const NOWHERE = -40;

/** By how many standard deviations of the bowler's own scatter a delivery is off: speed, rev rate, rotation. */
export type Off = readonly [speed: number, revs: number, rotation: number];
export const NOT_OFF: Off = [0, 0, 0];

/** Runs the bowler's mean delivery, or one that is off by so much. @param longest step, m: short ones for what is drawn, long ones for what is only scored */
export function throwBall(
  { bowler, ball, friction }: Thrower,
  laydownBoard: number,
  launchAngleDeg: number,
  out: AveragedRun,
  off: Off = NOT_OFF,
  longest?: number,
): void {
  runAveraged(ball, friction, release(offBy(bowler, off), { laydownBoard, launchAngleDeg }), 0, out, null, PINS_PLANE, longest);
}

/** The bowler's delivery when it is off by so much. */
export function offBy({ spread, ...mean }: Bowler, [speed, revs, rotation]: Off): Delivery {
  return {
    speedMph: Math.max(1, mean.speedMph + speed * spread.speedMph),
    revRateRpm: Math.max(0, mean.revRateRpm + revs * spread.revRateRpm),
    axisRotationDeg: mean.axisRotationDeg + rotation * spread.axisRotationDeg,
    axisTiltDeg: mean.axisTiltDeg,
  };
}

type Delivery = Pick<Bowler, "speedMph" | "revRateRpm" | "axisRotationDeg" | "axisTiltDeg">;

export function boardAtPins(run: AveragedRun): number {
  return run.reached === 1 ? xToBoard(run.x) : NOWHERE;
}

export function entryDegOf(run: AveragedRun): number {
  return Math.atan2(-run.vx, run.vy) / DEGREE;
}

/** What the hit has besides place and angle. */
export function qualityOf(run: AveragedRun, massLb: number): HitQuality {
  return { speedMph: Math.hypot(run.vx, run.vy) / MPH, slipMps: Math.hypot(run.ux, run.uy), massLb };
}

/**
 * A chance whose log odds move by a little, without the exponential: to second order, error below 0.005 for moves up to 0.5.
 */
export function nudged(chance: number, shift: number): number {
  const room = chance * (1 - chance);
  return Math.min(1, Math.max(0, chance + shift * room * (1 + shift * (0.5 - chance))));
}

/** A ball whose centre passes the outer edge of board 1 has left the lane. */
export const OFF_LANE_BOARD = 0.5;
