import type { Body } from "#engine/ball/body";
import type { FrictionField } from "#engine/contact/friction";
import { release } from "#engine/delivery/release";
import { type AveragedBall, emptyRun, runAveraged } from "#engine/motion/averaged";
import { type FullMechanics, type FullState, fullStart, fullStep, spinOf } from "#engine/motion/full";
import { DEGREE, MPH, RPM } from "#engine/units";

/** A laboratory: one ball, one friction, one delivery, SI. Isotropic unless moments are given. */
export interface Trial {
  readonly radius: number;
  /** κ = I/(mR²). */
  readonly inertiaRatio: number;
  readonly speed: number;
  /** Rotation, rad/s; its axis by rotation and tilt, deg (rotation 180° is backspin). */
  readonly spin: number;
  readonly axisRotationDeg?: number;
  readonly axisTiltDeg?: number;
  readonly friction: FrictionField;
  readonly gravity?: number;
  /** Longest step, s, where the friction has a cliff. */
  readonly longestStep?: number;
}

export interface Rolled {
  readonly t: number;
  readonly along: number;
  readonly side: number;
  readonly vx: number;
  readonly vy: number;
  readonly speed: number;
  /** Turn of the direction of travel to the left, deg. */
  readonly turnDeg: number;
}

const MASS = 6.8;
const NARROW = 1e-7;

function mechanicsOf({ radius, inertiaRatio, gravity }: Trial): FullMechanics {
  const moment = inertiaRatio * MASS * radius * radius;
  const body: Body = { mass: MASS, radius, moments: [moment, moment, moment], axisInBody: [1, 0, 0] };
  return { body, rollingResistance: 0, slipRegularisation: NARROW, gravity: gravity ?? 9.80665 };
}

function startOf(trial: Trial) {
  const bowler = {
    speedMph: trial.speed / MPH,
    revRateRpm: trial.spin / RPM,
    axisRotationDeg: trial.axisRotationDeg ?? 0,
    axisTiltDeg: trial.axisTiltDeg ?? 0,
  };
  return release(bowler, { laydownBoard: 20, launchAngleDeg: 0 });
}

/** The full model run until the slip is gone; the last moment of it by the slip's own rate. */
export function rollByFullModel(trial: Trial): Rolled {
  const mechanics = mechanicsOf(trial);
  const state = fullStart(mechanics, startOf(trial), 0, [1, 0, 0, 0]);
  for (let step = 0; step < 2_000_000; step++) {
    if (slipOf(mechanics, state) < 20 * NARROW) return rolled(state[0], state[1], state[2], state[3], state[4]);
    fullStep(mechanics, trial.friction, state, trial.longestStep ?? 0.004);
  }
  throw new Error("the ball never rolled");
}

function slipOf({ body }: FullMechanics, state: FullState): number {
  const spin = spinOf({ body } as FullMechanics, state);
  return Math.hypot(state[3] - body.radius * spin[1], state[4] + body.radius * spin[0]);
}

/** The averaged model run to a distance well past the roll; its rolling velocity is what is asked. */
export function velocityByAveragedModel(trial: Trial, until: number): Rolled {
  const ball: AveragedBall = {
    radius: trial.radius,
    inertiaRatio: trial.inertiaRatio,
    rollingResistance: 0,
    slipRegularisation: NARROW,
    gravity: trial.gravity ?? 9.80665,
  };
  const run = emptyRun();
  runAveraged(ball, trial.friction, startOf(trial), 0, run, null, until);
  return rolled(run.t, run.x, until, run.vx, run.vy);
}

function rolled(t: number, x: number, y: number, vx: number, vy: number): Rolled {
  return { t, along: y, side: -x, vx, vy, speed: Math.hypot(vx, vy), turnDeg: Math.atan2(-vx, vy) / DEGREE };
}
