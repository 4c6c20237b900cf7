import { PINS_PLANE } from "../lane/geometry.ts";
import { type AveragedBall, SCORED_STEP } from "./averaged.ts";
import { plainKernel } from "./plainKernel.ts";
import type { ShotConstants, ShotKernel } from "./shotKernel.ts";

let inUse: ShotKernel | null = null;

/** Brings the kernel that is used from now on. Which one it is changes no answer, only how soon it comes: all give the same bits. */
export function bringKernel(kernel: ShotKernel): void {
  inUse = kernel;
}

export function shotKernel(): ShotKernel {
  inUse ??= plainKernel();
  return inUse;
}

/** The constants of shots to the pins that are only scored. */
export function scoredShots(ball: AveragedBall): ShotConstants {
  const resisted = ball.rollingResistance * ball.gravity;
  return {
    slipGain: 1 + 1 / ball.inertiaRatio,
    epsilon2: ball.slipRegularisation ** 2,
    resistance: resisted / ball.inertiaRatio,
    slowing: (2 * resisted) / (1 + ball.inertiaRatio),
    until: PINS_PLANE,
    longestStep: SCORED_STEP,
  };
}
