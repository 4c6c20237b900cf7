import { boardToX } from "../lane/geometry.ts";
import { DEGREE, MPH, RPM } from "../units.ts";
import type { Bowler, Line } from "./bowler.ts";

/** State of the ball's centre and spin as it meets the lane, in a right-hander's frame (a left-hander's lane is mirrored before). */
export interface Release {
  readonly x: number;
  readonly vx: number;
  readonly vy: number;
  readonly wx: number;
  readonly wy: number;
  readonly wz: number;
}

/**
 * From what the bowler does to velocity and spin. With launch angle a (outward positive), rotation r and tilt t, and the frame of travel
 * e_r = (cos a, −sin a, 0), e_f = (sin a, cos a, 0): v = v e_f and ω = Ω(−cos r cos t e_r − sin r cos t e_f + sin t ẑ).
 * See docs/units-and-axes.md.
 */
export function release(bowler: Pick<Bowler, "speedMph" | "revRateRpm" | "axisRotationDeg" | "axisTiltDeg">, line: Line): Release {
  const speed = bowler.speedMph * MPH;
  const spin = bowler.revRateRpm * RPM;
  const rotation = bowler.axisRotationDeg * DEGREE;
  const tilt = bowler.axisTiltDeg * DEGREE;
  const launch = line.launchAngleDeg * DEGREE;
  const [sin, cos] = [Math.sin(launch), Math.cos(launch)];
  const right = -Math.cos(rotation) * Math.cos(tilt);
  const forward = -Math.sin(rotation) * Math.cos(tilt);
  return {
    x: boardToX(line.laydownBoard),
    vx: speed * sin,
    vy: speed * cos,
    wx: spin * (right * cos + forward * sin),
    wy: spin * (-right * sin + forward * cos),
    wz: spin * Math.sin(tilt),
  };
}
