import type { Body } from "../ball/body.ts";
import type { FrictionField } from "../contact/friction.ts";
import type { Release } from "../delivery/release.ts";
import { conjugate, type Quaternion, rotate, type Vector } from "../vector.ts";

/**
 * The full model: a rigid body with three moments of inertia, space-frame angular momentum L and orientation q.
 *
 *   F = −µ m g u/√(u² + ε²),  m v̇ = F,  L̇ = (−R ẑ) × F − c_rr m g R ω_h/|ω_h|,  ω = A I⁻¹ Aᵀ L,  q̇ = ½ (0, ω) q
 *
 * In this form |L| is exact when no torque acts. Derivation, step rule and measured errors: docs/model/full-motion.md.
 */

export interface FullMechanics {
  readonly body: Body;
  readonly rollingResistance: number;
  readonly slipRegularisation: number;
  readonly gravity: number;
}

/** State vector: t, x, y, vx, vy, Lx, Ly, Lz, qw, qx, qy, qz, then the work taken by sliding and by rolling resistance (J). */
export type FullState = Float64Array;
const SLIDING = 12;
const ROLLING = 13;

/** Longest step, s: at ε = 0.02 m/s it agrees with a 1e-10 integration to 1e-4 board. */
const LONGEST_STEP = 0.004;
/** Largest step in units of the slip's own decay time √(u² + ε²)/(µ g k): RK4 is stable to 2.78 of them. */
const STEP_PER_DECAY = 1.5;
const STEP_LIMIT = 2.6;

export function fullStart(mechanics: FullMechanics, release: Release, startY: number, orientation: Quaternion): FullState {
  const [i1, i2, i3] = mechanics.body.moments;
  const spin = rotate(conjugate(orientation), [release.wx, release.wy, release.wz]);
  const momentum = rotate(orientation, [i1 * spin[0], i2 * spin[1], i3 * spin[2]]);
  return Float64Array.of(0, release.x, startY, release.vx, release.vy, ...momentum, ...orientation, 0, 0);
}

/** Spin of a state, rad/s, in space. */
export function spinOf(mechanics: FullMechanics, state: FullState): Vector {
  const [i1, i2, i3] = mechanics.body.moments;
  const orientation: Quaternion = [state[8], state[9], state[10], state[11]];
  const momentum = rotate(conjugate(orientation), [state[5], state[6], state[7]]);
  return rotate(orientation, [momentum[0] / i1, momentum[1] / i2, momentum[2] / i3]);
}

export function kineticEnergy(mechanics: FullMechanics, state: FullState): number {
  const spin = spinOf(mechanics, state);
  const turning = spin[0] * state[5] + spin[1] * state[6] + spin[2] * state[7];
  return 0.5 * (mechanics.body.mass * (state[3] ** 2 + state[4] ** 2) + turning);
}

export function work(state: FullState): { sliding: number; rolling: number } {
  return { sliding: state[SLIDING], rolling: state[ROLLING] };
}

/**
 * One Runge–Kutta step, in place; returns the step taken. It is at most `longest` and follows the slip's decay: where friction is strong
 * and slip small the equations are stiff, and a step that would be unstable is taken again, shorter.
 */
export function fullStep(mechanics: FullMechanics, friction: FrictionField, s: FullState, longest: number): number {
  const { body, gravity } = mechanics;
  const { mass, radius } = body;
  const epsilon2 = mechanics.slipRegularisation ** 2;
  const resist = mechanics.rollingResistance * mass * gravity * radius;
  const j1 = 1 / body.moments[0];
  const j2 = 1 / body.moments[1];
  const j3 = 1 / body.moments[2];
  const perDecay = gravity * (1 + mass * radius * radius * Math.max(j1, j2, j3));
  const x = s[1];
  const y = s[2];
  const vx = s[3];
  const vy = s[4];
  const lx = s[5];
  const ly = s[6];
  const lz = s[7];
  const qw = s[8];
  const qx = s[9];
  const qy = s[10];
  const qz = s[11];
  let step = Math.min(LONGEST_STEP, longest);

  for (;;) {
    let unstable = false;
    let dx = 0;
    let dy = 0;
    let dvx = 0;
    let dvy = 0;
    let dlx = 0;
    let dly = 0;
    let dqw = 0;
    let dqx = 0;
    let dqy = 0;
    let dqz = 0;
    let sx = 0;
    let sy = 0;
    let svx = 0;
    let svy = 0;
    let slx = 0;
    let sly = 0;
    let sqw = 0;
    let sqx = 0;
    let sqy = 0;
    let sqz = 0;
    let slidingPower = 0;
    let rollingPower = 0;
    for (let stage = 0; stage < 4; stage++) {
      const ahead = stage === 0 ? 0 : stage === 3 ? step : 0.5 * step;
      const weight = stage === 0 || stage === 3 ? 1 : 2;
      const pvx = vx + ahead * dvx;
      const pvy = vy + ahead * dvy;
      const plx = lx + ahead * dlx;
      const ply = ly + ahead * dly;
      const w = qw + ahead * dqw;
      const i = qx + ahead * dqx;
      const j = qy + ahead * dqy;
      const k = qz + ahead * dqz;
      // Rows of A from an unnormalised quaternion; the norm is divided out once, in n.
      const n = 1 / (w * w + i * i + j * j + k * k);
      const a11 = (w * w + i * i - j * j - k * k) * n;
      const a12 = 2 * (i * j - w * k) * n;
      const a13 = 2 * (i * k + w * j) * n;
      const a21 = 2 * (i * j + w * k) * n;
      const a22 = (w * w - i * i + j * j - k * k) * n;
      const a23 = 2 * (j * k - w * i) * n;
      const a31 = 2 * (i * k - w * j) * n;
      const a32 = 2 * (j * k + w * i) * n;
      const a33 = (w * w - i * i - j * j + k * k) * n;
      const b1 = j1 * (a11 * plx + a21 * ply + a31 * lz);
      const b2 = j2 * (a12 * plx + a22 * ply + a32 * lz);
      const b3 = j3 * (a13 * plx + a23 * ply + a33 * lz);
      const wx = a11 * b1 + a12 * b2 + a13 * b3;
      const wy = a21 * b1 + a22 * b2 + a23 * b3;
      const wz = a31 * b1 + a32 * b2 + a33 * b3;
      const ux = pvx - radius * wy;
      const uy = pvy + radius * wx;
      const slip = Math.sqrt(ux * ux + uy * uy + epsilon2);
      const mu = friction(x + ahead * dx, y + ahead * dy);
      const decays = (mu * perDecay) / slip;
      if (stage === 0 && decays * step > STEP_PER_DECAY) step = STEP_PER_DECAY / decays;
      else if (decays * step > STEP_LIMIT) unstable = true;
      const grip = (mu * gravity) / slip;
      const drag = resist / Math.sqrt(wx * wx + wy * wy + 1e-6);
      dx = pvx;
      dy = pvy;
      dvx = -grip * ux;
      dvy = -grip * uy;
      dlx = mass * radius * dvy - drag * wx;
      dly = -mass * radius * dvx - drag * wy;
      dqw = -0.5 * (wx * i + wy * j + wz * k);
      dqx = 0.5 * (wx * w + wy * k - wz * j);
      dqy = 0.5 * (-wx * k + wy * w + wz * i);
      dqz = 0.5 * (wx * j - wy * i + wz * w);
      sx += weight * dx;
      sy += weight * dy;
      svx += weight * dvx;
      svy += weight * dvy;
      slx += weight * dlx;
      sly += weight * dly;
      sqw += weight * dqw;
      sqx += weight * dqx;
      sqy += weight * dqy;
      sqz += weight * dqz;
      slidingPower += weight * mass * grip * (ux * ux + uy * uy);
      rollingPower += weight * drag * (wx * wx + wy * wy);
    }
    if (unstable) {
      step *= 0.25;
      continue;
    }
    const sixth = step / 6;
    const nw = qw + sixth * sqw;
    const ni = qx + sixth * sqx;
    const nj = qy + sixth * sqy;
    const nk = qz + sixth * sqz;
    const norm = 1 / Math.sqrt(nw * nw + ni * ni + nj * nj + nk * nk);
    s[0] += step;
    s[1] = x + sixth * sx;
    s[2] = y + sixth * sy;
    s[3] = vx + sixth * svx;
    s[4] = vy + sixth * svy;
    s[5] = lx + sixth * slx;
    s[6] = ly + sixth * sly;
    s[8] = nw * norm;
    s[9] = ni * norm;
    s[10] = nj * norm;
    s[11] = nk * norm;
    s[SLIDING] += sixth * slidingPower;
    s[ROLLING] += sixth * rollingPower;
    return step;
  }
}

/** Steps from `state` until the ball's centre stands exactly at `yAt`, or for `patience` seconds; true if it got there. */
export function fullRunTo(
  mechanics: FullMechanics,
  friction: FrictionField,
  state: FullState,
  yAt: number,
  patience: number,
  onStep?: (state: FullState) => void,
): boolean {
  const before = new Float64Array(state.length);
  while (state[2] < yAt - 1e-12) {
    if (state[0] > patience || state[4] <= 0) return false;
    // Only a step that may reach yAt has to be taken back; no push of the lane doubles the speed within one.
    if (yAt - state[2] < 2 * state[4] * LONGEST_STEP) before.set(state);
    const step = fullStep(mechanics, friction, state, LONGEST_STEP);
    if (state[2] > yAt) landOn(mechanics, friction, before, state, step, yAt);
    onStep?.(state);
  }
  return true;
}

/** Takes the step again so that it ends at yAt: Newton on its length, starting from the chord. */
function landOn(mechanics: FullMechanics, friction: FrictionField, before: FullState, state: FullState, step: number, yAt: number): void {
  let length = (step * (yAt - before[2])) / (state[2] - before[2]);
  for (let i = 0; i < 6; i++) {
    state.set(before);
    const taken = fullStep(mechanics, friction, state, length);
    const miss = state[2] - yAt;
    if (Math.abs(miss) < 1e-12 || taken < length) return;
    length -= miss / state[4];
  }
}
