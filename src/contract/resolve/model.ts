import { ASSUMPTIONS } from "#engine/assumptions";
import type { MotionModel } from "#engine/motion/shot";
import { STANDARD_GRAVITY } from "#engine/units";
import type { JobModel } from "../job/model.ts";
import type { DefaultsTaken } from "./defaultsTaken.ts";

/** How a single shot is computed, with everything filled in. */
export function resolveModel(job: JobModel | undefined, defaults: DefaultsTaken): MotionModel {
  const orientation = job?.coreOrientation;
  return {
    motion: defaults.or("model.motion", job?.motion, "full"),
    slipRegularisationMps: defaults.or("model.slipRegularisationMps", job?.slipRegularisationMps, 0.02),
    rollingResistance: defaults.or("model.rollingResistance", job?.rollingResistance, ASSUMPTIONS["roll.resistance"].value),
    startFt: defaults.or("model.startFt", job?.startFt, 0),
    gravity: defaults.or("model.gravity", job?.gravity, STANDARD_GRAVITY),
    coreOrientation: orientation === undefined ? null : unitLength(orientation),
  };
}

/** Written with a few decimals, a unit quaternion is only nearly one. */
function unitLength(q: readonly [number, number, number, number]): [number, number, number, number] {
  const length = Math.hypot(...q);
  return [q[0] / length, q[1] / length, q[2] / length, q[3] / length];
}
