import { INCH, MPH, RPM } from "../units.ts";

export type SpeedClass = "speedDominant" | "matched" | "revDominant";

/** Bounds of S = Rω/v₀ between the classes: our own proposal, from published deliveries (.29 at 220 rpm/19 mph to .70 at 520 rpm/19 mph). */
const MATCHED_FROM = 0.4;
const MATCHED_TO = 0.55;

/** Surface speed of the rotation over the ball's speed, S = Rω/v₀; 1 would be rolling. */
export function spinRatio(speedMph: number, revRateRpm: number, diameterIn: number): number {
  return ((diameterIn / 2) * INCH * revRateRpm * RPM) / (speedMph * MPH);
}

export function speedClass(ratio: number): SpeedClass {
  if (ratio < MATCHED_FROM) return "speedDominant";
  return ratio <= MATCHED_TO ? "matched" : "revDominant";
}
