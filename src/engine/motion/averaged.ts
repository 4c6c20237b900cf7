import type { FrictionField } from "../contact/friction.ts";
import type { Release } from "../delivery/release.ts";
import { PINS_PLANE } from "../lane/geometry.ts";
import { FOOT } from "../units.ts";
import { HOOK_SHARE, ROLL_SLIP } from "./phases.ts";

/**
 * The averaged model: the core's tumbling is averaged out, the ball moves like an isotropic one with I = |L|²/2T.
 * Position down the lane is the independent variable; see docs/model/averaged-motion.md for derivation, steps and errors.
 *
 * With slip u, k = 1 + 1/κ, a = µg/√(u² + ε²) and b = (c_rr g/κ)/|Rω_h| the equations are
 * v̇ = −a u,  u̇ = −k a u + b (v − u), because Rω_h is v − u turned by a right angle.
 */

/** What the model needs of ball and place beyond the friction field. SI. */
export interface AveragedBall {
  readonly radius: number;
  /** κ = I/(mR²) > 0. */
  readonly inertiaRatio: number;
  readonly rollingResistance: number;
  readonly slipRegularisation: number;
  readonly gravity: number;
}

/** Mutable result of a run, reused by callers that make many thousands. Lengths in m; NaN-free: `hookY` and `rollY` are −1 where it did not happen. */
export interface AveragedRun {
  reached: number;
  x: number;
  vx: number;
  vy: number;
  ux: number;
  uy: number;
  t: number;
  hookY: number;
  rollY: number;
  breakX: number;
  breakY: number;
  startSlip: number;
}

export function emptyRun(): AveragedRun {
  return { reached: 0, x: 0, vx: 0, vy: 0, ux: 0, uy: 0, t: 0, hookY: -1, rollY: -1, breakX: 0, breakY: 0, startSlip: 0 };
}

/** Where a run left its states, for those who draw: flat rows of {@link TRACE_WIDTH} numbers y, x, vx, vy, ux, uy, t. */
export type Trace = number[];
export const TRACE_WIDTH = 7;

/** Longest steps: of a course that is drawn, and of one of the many that are only scored. */
const DRAWN_STEP = 0.5 * FOOT;
export const SCORED_STEP = 2 * FOOT;
/** No step uses up more than this share of the slip that is left, but for the last, which may be as short as this, m. */
export const LEAST_OF_SLIP = 0.9;
export const SHORTEST = 0.08;
/** A ball slower than this down the lane is not followed further, m/s. */
export const SLOWEST = 0.3;

/**
 * Runs one ball to `until` (default: the plane of the pins) and writes the end state into `out`.
 * Fourth-order Runge–Kutta in y, steps of half a foot; when the slip is nearly gone a closed-form straight roll.
 */
export function runAveraged(
  ball: AveragedBall,
  friction: FrictionField,
  start: Release,
  startY: number,
  out: AveragedRun,
  trace: Trace | null = null,
  until = PINS_PLANE,
  longest = DRAWN_STEP,
): void {
  const { radius, rollingResistance, gravity } = ball;
  const k = 1 + 1 / ball.inertiaRatio;
  const epsilon2 = ball.slipRegularisation ** 2;
  const resist = (rollingResistance * gravity) / ball.inertiaRatio;
  let y = startY;
  let x = start.x;
  let vx = start.vx;
  let vy = start.vy;
  let ux = start.vx - radius * start.wy;
  let uy = start.vy + radius * start.wx;
  let t = 0;
  let slip = Math.sqrt(ux * ux + uy * uy);
  const startSlip = slip;
  const hookSlip = HOOK_SHARE * startSlip;
  let hookY = -1;
  let rollY = -1;
  let breakX = x;
  let breakY = y;
  if (trace) trace.push(y, x, vx, vy, ux, uy, t);
  if (slip <= ROLL_SLIP) rollY = y;

  while (rollY < 0 && y < until - 1e-12 && vy > SLOWEST) {
    let step = longest - (y % longest);
    if (step < 1e-9) step = longest;

    let dx = 0;
    let dvx = 0;
    let dvy = 0;
    let dux = 0;
    let duy = 0;
    let dt = 0;
    let sx = 0;
    let svx = 0;
    let svy = 0;
    let sux = 0;
    let suy = 0;
    let st = 0;
    for (let stage = 0; stage < 4; stage++) {
      const ahead = stage === 0 ? 0 : stage === 3 ? step : 0.5 * step;
      const weight = stage === 0 || stage === 3 ? 1 : 2;
      const px = x + ahead * dx;
      const pvx = vx + ahead * dvx;
      const pvy = vy + ahead * dvy;
      const pux = ux + ahead * dux;
      const puy = uy + ahead * duy;
      const inverse = 1 / pvy;
      const grip = ((friction(px, y + ahead) * gravity) / Math.sqrt(pux * pux + puy * puy + epsilon2)) * inverse;
      const rx = pvx - pux;
      const ry = pvy - puy;
      const drag = (resist / Math.sqrt(rx * rx + ry * ry + 1e-6)) * inverse;
      dx = pvx * inverse;
      dvx = -grip * pux;
      dvy = -grip * puy;
      dux = k * dvx + drag * rx;
      duy = k * dvy + drag * ry;
      dt = inverse;
      sx += weight * dx;
      svx += weight * dvx;
      svy += weight * dvy;
      sux += weight * dux;
      suy += weight * duy;
      st += weight * dt;
      if (stage === 0) {
        // Slip goes at k·grip a metre for each metre a second: a step that would use it up is cut short, or it would overshoot into slip the other way.
        const usedUpIn = LEAST_OF_SLIP / (k * grip);
        if (step > usedUpIn) step = Math.max(usedUpIn, SHORTEST);
        if (step > until - y) step = until - y;
      }
    }
    const sixth = step / 6;
    x += sixth * sx;
    vx += sixth * svx;
    vy += sixth * svy;
    ux += sixth * sux;
    uy += sixth * suy;
    t += sixth * st;
    const before = slip;
    slip = Math.sqrt(ux * ux + uy * uy);
    if (hookY < 0 && slip <= hookSlip) hookY = y + (step * (before - hookSlip)) / (before - slip);
    if (slip <= ROLL_SLIP) rollY = y + (step * (before - ROLL_SLIP)) / Math.max(before - slip, 1e-12);
    y += step;
    if (x > breakX) {
      breakX = x;
      breakY = y;
    }
    if (trace) trace.push(y, x, vx, vy, ux, uy, t);
  }

  if (rollY >= 0 && vy > SLOWEST) {
    // The rest of the slip goes as it always goes, whatever the friction: v + κ·(surface speed) is kept.
    vx -= ux / k;
    vy -= uy / k;
    ux = 0;
    uy = 0;
    const heading = Math.hypot(vx, vy);
    const slowing = (rollingResistance * gravity) / (1 + ball.inertiaRatio);
    const path = ((until - y) * heading) / vy;
    const left = heading * heading - 2 * slowing * path;
    if (left > 0) {
      const pace = Math.sqrt(left);
      x += (vx / heading) * path;
      vx *= pace / heading;
      vy *= pace / heading;
      t += (2 * path) / (heading + pace);
      y = until;
      if (x > breakX) {
        breakX = x;
        breakY = y;
      }
      if (trace) trace.push(y, x, vx, vy, ux, uy, t);
    }
  }
  out.reached = y >= until - 1e-9 ? 1 : 0;
  out.x = x;
  out.vx = vx;
  out.vy = vy;
  out.ux = ux;
  out.uy = uy;
  out.t = t;
  out.hookY = hookY;
  out.rollY = rollY;
  out.breakX = breakX;
  out.breakY = breakY;
  out.startSlip = startSlip;
}
