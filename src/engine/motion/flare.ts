import type { Body } from "../ball/body.ts";
import { dot, type Vector } from "../vector.ts";

/** How the size of the angular momentum grew, at moments in time: what drives the flare. Times ascending, s; |L| in kg·m²/s. */
export interface MomentumHistory {
  readonly t: readonly number[];
  readonly momentum: readonly number[];
}

/**
 * Track flare: how far the bowler's axis, and with it the ring of oil, wanders over the ball, m along the surface from the first ring to
 * the one furthest from it.
 *
 * Friction's torque turns with the ball, so seen from the body only its part along the axis survives a revolution: the body's momentum
 * grows as |L|(t) and turns as that of a free top, dL/dt = L × ω + (d|L|/dt) L/|L|. It does not feed back on the path at this order
 * (docs/model/flare.md), hence it is computed afterwards.
 */
export function flare(body: Body, history: MomentumHistory): number {
  const [i1, i2, i3] = body.moments;
  const start = axisMomentum(body, history.momentum[0]);
  let [l1, l2, l3] = start;
  const first = axisOf(start, body.moments);
  let widest = 0;
  for (let n = 1; n < history.t.length; n++) {
    const span = history.t[n] - history.t[n - 1];
    const spin = Math.hypot(l1 / i1, l2 / i2, l3 / i3);
    const pieces = Math.max(1, Math.ceil(span * spin * 2));
    for (let piece = 0; piece < pieces; piece++) [l1, l2, l3] = turnFreely([l1, l2, l3], body.moments, span / pieces);
    const grown = history.momentum[n] / Math.hypot(l1, l2, l3);
    l1 *= grown;
    l2 *= grown;
    l3 *= grown;
    const apart = Math.acos(Math.min(1, Math.max(-1, dot(first, axisOf([l1, l2, l3], body.moments)))));
    if (apart > widest) widest = apart;
  }
  return widest * body.radius;
}

/** Momentum of given size for rotation about the bowler's axis. */
function axisMomentum(body: Body, size: number): Vector {
  const along = body.axisInBody.map((n, i) => n * body.moments[i]);
  const scale = size / Math.hypot(along[0], along[1], along[2]);
  return [along[0] * scale, along[1] * scale, along[2] * scale];
}

function axisOf(momentum: Vector, moments: readonly [number, number, number]): Vector {
  const spin: Vector = [momentum[0] / moments[0], momentum[1] / moments[1], momentum[2] / moments[2]];
  const size = Math.hypot(...spin);
  return [spin[0] / size, spin[1] / size, spin[2] / size];
}

/** One Runge–Kutta step of Euler's equations without torque, L̇ = L × I⁻¹L in the body's frame. */
export function turnFreely(momentum: Vector, moments: readonly [number, number, number], step: number): Vector {
  const rate = (l: Vector): Vector => {
    const [w1, w2, w3] = [l[0] / moments[0], l[1] / moments[1], l[2] / moments[2]];
    return [l[1] * w3 - l[2] * w2, l[2] * w1 - l[0] * w3, l[0] * w2 - l[1] * w1];
  };
  const moved = (by: Vector, much: number): Vector => [momentum[0] + much * by[0], momentum[1] + much * by[1], momentum[2] + much * by[2]];
  const a = rate(momentum);
  const b = rate(moved(a, step / 2));
  const c = rate(moved(b, step / 2));
  const d = rate(moved(c, step));
  const mean = (i: 0 | 1 | 2) => (a[i] + 2 * b[i] + 2 * c[i] + d[i]) / 6;
  return moved([mean(0), mean(1), mean(2)], step);
}
