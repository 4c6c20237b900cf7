import { Solver } from "odex";
import type { FrictionField } from "#engine/contact/friction";
import type { FullMechanics } from "#engine/motion/full";

/** How closely the solver is to look, and its longest step, s. */
export interface Care {
  readonly tolerance: number;
  readonly longest: number;
}
const USUAL_CARE: Care = { tolerance: 1e-9, longest: 0.003 };

/**
 * The full equations written down a second time, plainly, and given to a general-purpose extrapolation integrator (Hairer, Nørsett & Wanner's ODEX,
 * npm `odex`): on a real oiled lane, where the film has shoulders and ends, not on a formula.
 */
export function byOdex(
  mechanics: FullMechanics,
  friction: FrictionField,
  start: readonly number[],
  until: number,
  { tolerance, longest }: Care = USUAL_CARE,
): number[] {
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
    absoluteTolerance: tolerance,
    relativeTolerance: tolerance,
    maxStepSize: longest,
    maxSteps: 1_000_000,
  });
  return solver.solve(equations, 0, start as number[], until).y;
}
