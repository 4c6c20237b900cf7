import type { FrictionField } from "../contact/friction.ts";
import type { Release } from "../delivery/release.ts";
import type { Quaternion } from "../vector.ts";
import { type FullMechanics, type FullState, fullRunTo, fullStart, kineticEnergy, spinOf, work } from "./full.ts";
import type { Moment } from "./phases.ts";
import type { RawRun, RawState } from "./rawRun.ts";

/** A ball that has not got to the pins after this time is not followed further, s. */
const PATIENCE = 12;

/** The full model, kept at every step and at the wanted distances (m, ascending). */
export function runFullShot(
  mechanics: FullMechanics,
  friction: FrictionField,
  start: Release,
  startY: number,
  orientation: Quaternion,
  wanted: readonly number[],
): RawRun {
  const { radius } = mechanics.body;
  const moments: Moment[] = [];
  const times: number[] = [];
  const momenta: number[] = [];
  const keep = (s: FullState) => {
    const spin = spinOf(mechanics, s);
    moments.push({ t: s[0], x: s[1], y: s[2], slip: Math.hypot(s[3] - radius * spin[1], s[4] + radius * spin[0]) });
    times.push(s[0]);
    momenta.push(Math.hypot(s[5], s[6], s[7]));
  };
  const state = fullStart(mechanics, start, startY, orientation);
  const startJ = kineticEnergy(mechanics, state);
  keep(state);
  const states: RawState[] = [];
  for (const y of wanted) {
    if (!fullRunTo(mechanics, friction, state, y, PATIENCE, keep)) break;
    states.push({ y, t: state[0], x: state[1], v: [state[3], state[4]], w: spinOf(mechanics, state) });
  }
  const { sliding, rolling } = work(state);
  const endJ = kineticEnergy(mechanics, state);
  return {
    moments,
    states,
    history: { t: times, momentum: momenta },
    energy: { startJ, endJ, slidingLossJ: sliding, rollingLossJ: rolling, residualJ: endJ + sliding + rolling - startJ },
  };
}
