import { type Body, effectiveMoment } from "../ball/body.ts";
import type { FrictionField } from "../contact/friction.ts";
import type { Release } from "../delivery/release.ts";
import { type AveragedBall, emptyRun, runAveraged, TRACE_WIDTH, type Trace } from "./averaged.ts";
import type { RawRun, RawState } from "./rawRun.ts";
import type { Shot } from "./shot.ts";

interface State {
  readonly y: number;
  readonly t: number;
  readonly x: number;
  readonly vx: number;
  readonly vy: number;
  readonly ux: number;
  readonly uy: number;
}

/** The averaged model run from one wanted distance to the next. The spin about the vertical is kept: nothing acts on it. */
export function runAveragedShot(
  ball: AveragedBall,
  body: Body,
  friction: FrictionField,
  start: Release,
  startY: number,
  wanted: readonly number[],
): RawRun {
  const path: State[] = [];
  const states: RawState[] = [];
  const spin = (s: State) => [(s.uy - s.vy) / ball.radius, (s.vx - s.ux) / ball.radius, start.wz] as const;
  let state: State = {
    y: startY,
    t: 0,
    x: start.x,
    vx: start.vx,
    vy: start.vy,
    ux: start.vx - ball.radius * start.wy,
    uy: start.vy + ball.radius * start.wx,
  };
  path.push(state);
  for (const goal of wanted) {
    const out = emptyRun();
    const trace: Trace = [];
    const [wx, wy, wz] = spin(state);
    runAveraged(ball, friction, { x: state.x, vx: state.vx, vy: state.vy, wx, wy, wz }, state.y, out, trace, goal);
    const from = state.t;
    for (let row = TRACE_WIDTH; row < trace.length; row += TRACE_WIDTH) {
      const [y, x, vx, vy, ux, uy, t] = trace.slice(row, row + TRACE_WIDTH);
      state = { y, t: from + t, x, vx, vy, ux, uy };
      path.push(state);
    }
    if (out.reached === 0) break;
    states.push({ y: goal, t: state.t, x: state.x, v: [state.vx, state.vy], w: spin(state) });
  }
  const moment = effectiveMoment(body);
  return {
    moments: path.map((s) => ({ t: s.t, x: s.x, y: s.y, slip: Math.hypot(s.ux, s.uy) })),
    states,
    history: { t: path.map((s) => s.t), momentum: path.map((s) => moment * Math.hypot(...spin(s))) },
    energy: energyOf(ball, body.mass, moment, start.wz, path),
  };
}

/**
 * The account of energy, from the states alone. Between two of them u is linear in v but for rolling resistance, so sliding took
 * −m ∫ u·dv = −m ū·Δv; rolling resistance took c_rr m g ∫ |Rω_h| dt. What is left over is the integration's own error.
 */
function energyOf(ball: AveragedBall, mass: number, moment: number, wz: number, path: readonly State[]): Shot["energy"] {
  const rim = (s: State) => Math.hypot(s.vx - s.ux, s.vy - s.uy);
  const kinetic = (s: State) => 0.5 * (mass * (s.vx ** 2 + s.vy ** 2) + moment * ((rim(s) / ball.radius) ** 2 + wz ** 2));
  let slidingLossJ = 0;
  let rollingLossJ = 0;
  for (let i = 1; i < path.length; i++) {
    const [a, b] = [path[i - 1], path[i]];
    slidingLossJ -= mass * (0.5 * (a.ux + b.ux) * (b.vx - a.vx) + 0.5 * (a.uy + b.uy) * (b.vy - a.vy));
    rollingLossJ += ball.rollingResistance * mass * ball.gravity * 0.5 * (rim(a) + rim(b)) * (b.t - a.t);
  }
  const [startJ, endJ] = [kinetic(path[0]), kinetic(path[path.length - 1])];
  return { startJ, endJ, slidingLossJ, rollingLossJ, residualJ: endJ + slidingLossJ + rollingLossJ - startJ };
}
