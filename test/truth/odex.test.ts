import { Solver } from "odex";
import { describe, expect, it } from "vitest";
import { assume } from "#engine/assumptions";
import { bodyOf } from "#engine/ball/body";
import { TYPICAL_BALL } from "#engine/ball/typical";
import type { FrictionField } from "#engine/contact/friction";
import { release } from "#engine/delivery/release";
import { filmOfPattern } from "#engine/lane/film";
import { BOARD, PINS_PLANE } from "#engine/lane/geometry";
import { type FullMechanics, fullRunTo, fullStart } from "#engine/motion/full";
import { frictionOnLane } from "#engine/motion/ground";
import { STYLES } from "#engine/planning/situations";
import { aboutAxis, type Quaternion } from "#engine/vector";

/**
 * The full equations written down a second time, plainly, and given to a general-purpose extrapolation integrator (Hairer, Nørsett & Wanner's ODEX,
 * npm `odex`): on a real oiled lane, where the film has shoulders and ends, not on a formula.
 */
function byOdex(mechanics: FullMechanics, friction: FrictionField, start: readonly number[], until: number): number[] {
  const { body, gravity, rollingResistance, slipRegularisation } = mechanics;
  const equations = (_t: number, s: number[]) => {
    const [x, y, vx, vy, lx, ly, lz, qw, qx, qy, qz] = s;
    const size = Math.hypot(qw, qx, qy, qz);
    const [w, i, j, k] = [qw / size, qx / size, qy / size, qz / size];
    const turn = [
      [1 - 2 * (j * j + k * k), 2 * (i * j - w * k), 2 * (i * k + w * j)],
      [2 * (i * j + w * k), 1 - 2 * (i * i + k * k), 2 * (j * k - w * i)],
      [2 * (i * k - w * j), 2 * (j * k + w * i), 1 - 2 * (i * i + j * j)],
    ];
    const inBody = [0, 1, 2].map((c) => (turn[0][c] * lx + turn[1][c] * ly + turn[2][c] * lz) / body.moments[c]);
    const [ox, oy, oz] = [0, 1, 2].map((r) => turn[r][0] * inBody[0] + turn[r][1] * inBody[1] + turn[r][2] * inBody[2]);
    const [ux, uy] = [vx - body.radius * oy, vy + body.radius * ox];
    const weight = body.mass * gravity;
    const share = (friction(x, y) * weight) / Math.sqrt(ux * ux + uy * uy + slipRegularisation ** 2);
    const [fx, fy] = [-share * ux, -share * uy];
    const drag = (rollingResistance * weight * body.radius) / Math.sqrt(ox * ox + oy * oy + 1e-6);
    return [
      vx,
      vy,
      fx / body.mass,
      fy / body.mass,
      body.radius * fy - drag * ox,
      -body.radius * fx - drag * oy,
      0,
      -0.5 * (ox * i + oy * j + oz * k),
      0.5 * (ox * w + oy * k - oz * j),
      0.5 * (oy * w + oz * i - ox * k),
      0.5 * (oz * w + ox * j - oy * i),
    ];
  };
  const solver = Object.assign(new Solver(11), {
    absoluteTolerance: 1e-9,
    relativeTolerance: 1e-9,
    maxStepSize: 0.003,
    maxSteps: 1_000_000,
  });
  return solver.solve(equations, 0, start as number[], until).y;
}

const cases = [
  ["matched, hybrid 2000, medium-41", STYLES.matched, "hybrid", 0.45, "medium-41", 0.05, 0.005, { laydownBoard: 19, launchAngleDeg: 1.5 }],
  [
    "rev-dominant, solid 500, heavy-44, asymmetric",
    STYLES.revDominant,
    "solid",
    1.1,
    "heavy-44",
    0.054,
    0.02,
    { laydownBoard: 28, launchAngleDeg: 2.4 },
  ],
  [
    "speed-dominant, polished pearl, light-38",
    STYLES.speedDominant,
    "pearl",
    0.12,
    "light-38",
    0.04,
    0,
    { laydownBoard: 12, launchAngleDeg: 0.4 },
  ],
] as const;

describe("full model against odex on the oiled lane", () => {
  it.each(cases)("%s", (_name, bowler, cover, ra, pattern, differentialIn, intermediateDifferentialIn, line) => {
    const ball = { ...TYPICAL_BALL, cover, finish: { number: 2000, polished: false }, differentialIn, intermediateDifferentialIn };
    const mechanics: FullMechanics = { body: bodyOf(ball), rollingResistance: 0.003, slipRegularisation: 0.02, gravity: 9.80665 };
    const friction = frictionOnLane(filmOfPattern({ kind: "named", id: pattern }), ball, ra, assume());
    const orientation: Quaternion = aboutAxis([0.3, -0.5, 0.8], 1.1);
    const state = fullStart(mechanics, release(bowler, line), 0, orientation);
    const start = Array.from(state.slice(1, 12));
    expect(fullRunTo(mechanics, friction, state, PINS_PLANE, 10)).toBe(true);
    const known = byOdex(mechanics, friction, start, state[0]);
    expect(Math.abs(state[1] - known[0]) / BOARD, "boards").toBeLessThan(0.002);
    expect(Math.abs(state[2] - known[1]), "metres down the lane").toBeLessThan(1e-4);
    expect(Math.abs(Math.atan2(-state[3], state[4]) - Math.atan2(-known[2], known[3])) / (Math.PI / 180), "degrees").toBeLessThan(0.003);
  });
});
