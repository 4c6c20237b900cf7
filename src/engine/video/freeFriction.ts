import { FOOT, INCH, STANDARD_GRAVITY } from "../units.ts";

/**
 * The averaged model (`motion/averaged`) with friction as the lane happens to have it: its logarithm runs straight between knots down the lane. The same
 * equations in equal steps with a wider rounding of the last slip, so that a course changes smoothly with what it is fitted by. See docs/model/video.md.
 */
export const KNOTS_FT = [0, 8, 16, 24, 30, 35, 39, 43, 47, 52, 60] as const;

/** What a course follows from. */
export interface Delivered {
  /** Of the ball's centre at the foul line, m, in a right-hander's lane. */
  readonly x: number;
  /** Outward positive. */
  readonly angle: number;
  readonly speed: number;
  /** Rotation about the horizontal part of the axis, rad/s, and that part's direction. */
  readonly spin: number;
  readonly rotation: number;
  /** ln µ at {@link KNOTS_FT}. */
  readonly lnFriction: readonly number[];
}

/** A course as rows every half foot: y, t since the foul line, x, v_x, v_y, share of the slip gone. */
export interface FreeCourse {
  readonly y: Float64Array;
  readonly t: Float64Array;
  readonly x: Float64Array;
  readonly vx: Float64Array;
  readonly vy: Float64Array;
  readonly gone: Float64Array;
}

/** A ball of middle size and core (RG with its differential, *common practice*); what is wrong with it goes into friction, which is free. */
export const USUAL_RADIUS = 4.275 * INCH;
const INERTIA_RATIO = (2.53 / 4.275) ** 2;
const SLIP_TO_SPEED = 1 + 1 / INERTIA_RATIO;
const RESIST = (0.003 * STANDARD_GRAVITY) / INERTIA_RATIO;

const STEP = 0.5 * FOOT;
const ROWS = 122;
/** Slip at which friction has 71 % of its full value, m/s: the step stays stable up to the most friction that is tried. */
const ROUNDING = 0.15;
const MOST_FRICTION = 0.45;
/** Slower than this the ball is not followed; it keeps a fit on its way finite, m/s. */
const SLOWEST = 1;

/** Velocity of the ball and slip of its contact point at the foul line: `delivery/release` without tilt. */
function startOf({ angle, speed, spin, rotation }: Delivered) {
  const [vx, vy] = [speed * Math.sin(angle), speed * Math.cos(angle)];
  const rim = USUAL_RADIUS * spin;
  return { vx, vy, ux: vx + rim * Math.sin(rotation - angle), uy: vy - rim * Math.cos(rotation - angle) };
}

/** Runs a ball from the foul line past the pins by fourth-order Runge–Kutta in y. */
export function freeCourse(delivered: Delivered): FreeCourse {
  const start = startOf(delivered);
  const friction = frictionRows(delivered.lnFriction);
  const course = emptyCourse();
  let { vx, vy, ux, uy } = start;
  let x = delivered.x;
  let t = 0;
  const startSlip = Math.max(1e-3, Math.hypot(ux, uy));
  for (let row = 0; row < ROWS; row++) {
    course.y[row] = row * STEP;
    [course.x[row], course.t[row], course.vx[row], course.vy[row]] = [x, t, vx, vy];
    course.gone[row] = 1 - Math.sqrt(ux * ux + uy * uy) / startSlip;
    let [dx, dt, dvx, dvy, dux, duy] = [0, 0, 0, 0, 0, 0];
    let [sx, st, svx, svy, sux, suy] = [0, 0, 0, 0, 0, 0];
    for (let stage = 0; stage < 4; stage++) {
      const ahead = stage === 0 ? 0 : stage === 3 ? STEP : 0.5 * STEP;
      const weight = stage === 0 || stage === 3 ? 1 : 2;
      const [pvx, pvy] = [vx + ahead * dvx, Math.max(SLOWEST, vy + ahead * dvy)];
      const [pux, puy] = [ux + ahead * dux, uy + ahead * duy];
      const mu = friction[2 * row + (stage === 0 ? 0 : stage === 3 ? 2 : 1)];
      const grip = (mu * STANDARD_GRAVITY) / (Math.sqrt(pux * pux + puy * puy + ROUNDING * ROUNDING) * pvy);
      const [rx, ry] = [pvx - pux, pvy - puy];
      const drag = RESIST / (Math.sqrt(rx * rx + ry * ry + 1e-2) * pvy);
      [dx, dt, dvx, dvy] = [pvx / pvy, 1 / pvy, -grip * pux, -grip * puy];
      [dux, duy] = [SLIP_TO_SPEED * dvx + drag * rx, SLIP_TO_SPEED * dvy + drag * ry];
      sx += weight * dx;
      st += weight * dt;
      svx += weight * dvx;
      svy += weight * dvy;
      sux += weight * dux;
      suy += weight * duy;
    }
    const sixth = STEP / 6;
    x += sixth * sx;
    t += sixth * st;
    vx += sixth * svx;
    vy = Math.max(SLOWEST, vy + sixth * svy);
    ux += sixth * sux;
    uy += sixth * suy;
  }
  return course;
}

function emptyCourse(): FreeCourse {
  const column = () => new Float64Array(ROWS);
  return { y: column(), t: column(), x: column(), vx: column(), vy: column(), gone: column() };
}

/** µ every quarter of a foot, its logarithm straight between the knots. */
function frictionRows(lnFriction: readonly number[]): Float64Array {
  const rows = new Float64Array(2 * ROWS + 1);
  let knot = 0;
  for (let row = 0; row < rows.length; row++) {
    const ft = Math.min(row / 4, 60);
    while (knot < KNOTS_FT.length - 2 && ft > KNOTS_FT[knot + 1]) knot++;
    const share = (ft - KNOTS_FT[knot]) / (KNOTS_FT[knot + 1] - KNOTS_FT[knot]);
    rows[row] = Math.min(MOST_FRICTION, Math.exp(lnFriction[knot] + share * (lnFriction[knot + 1] - lnFriction[knot])));
  }
  return rows;
}

export interface Place {
  readonly x: number;
  readonly y: number;
}

/** Where the ball is a time after the foul line; before the foul line and past the last row it goes straight on. */
export function placeAt({ y, t, x, vx, vy }: FreeCourse, time: number): Place {
  const last = t.length - 1;
  if (time <= 0) return { x: x[0] + vx[0] * time, y: vy[0] * time };
  if (time >= t[last]) return { x: x[last] + vx[last] * (time - t[last]), y: y[last] + vy[last] * (time - t[last]) };
  let low = 0;
  let high = last;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (t[middle] <= time) low = middle;
    else high = middle;
  }
  const span = t[high] - t[low];
  const share = (time - t[low]) / span;
  return {
    x: between(x[low], x[high], span * vx[low], span * vx[high], share),
    y: between(y[low], y[high], span * vy[low], span * vy[high], share),
  };
}

/** Cubic Hermite. */
function between(a: number, b: number, slopeA: number, slopeB: number, s: number): number {
  const r = 1 - s;
  return a * (1 + 2 * s) * r * r + slopeA * s * r * r + b * s * s * (3 - 2 * s) - slopeB * s * s * r;
}

/** A column of the course at a distance down the lane, straight between rows. */
export function columnAt(column: Float64Array, y: number): number {
  const place = Math.min(Math.max(y / STEP, 0), ROWS - 1.000001);
  const row = Math.floor(place);
  return column[row] + (place - row) * (column[row + 1] - column[row]);
}
