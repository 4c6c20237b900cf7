import { type Measured, readingSd } from "./measured.ts";

/** One number of a delivery from several shots. */
export interface OverShots {
  /** Mean, with the ends of its 95 % interval; of one shot, the reading's own ends. */
  readonly mean: Measured;
  /** The bowler's own standard deviation from shot to shot: what is seen, less what the reading error explains. Null from one shot. */
  readonly spread: number | null;
  readonly shots: number;
}

/** Two-sided 95 % points of Student's t for 1 to 30 degrees of freedom (NIST/SEMATECH e-Handbook, table 1.3.6.7.2); beyond, the normal's with its first correction. */
const T95 = [
  12.706, 4.303, 3.182, 2.776, 2.571, 2.447, 2.365, 2.306, 2.262, 2.228, 2.201, 2.179, 2.16, 2.145, 2.131, 2.12, 2.11, 2.101, 2.093, 2.086,
  2.08, 2.074, 2.069, 2.064, 2.06, 2.056, 2.052, 2.048, 2.045, 2.042,
];

export function studentT95(degrees: number): number {
  return degrees <= T95.length ? T95[degrees - 1] : 1.96 + 2.4 / degrees;
}

/** Mean and spread of one number over the shots in which it was seen; null where it was seen in none. */
export function overShots(seen: readonly Measured[]): OverShots | null {
  const shots = seen.length;
  if (shots === 0) return null;
  if (shots === 1) return { mean: seen[0], spread: null, shots };
  const value = seen.reduce((sum, one) => sum + one.value, 0) / shots;
  const variance = seen.reduce((sum, one) => sum + (one.value - value) ** 2, 0) / (shots - 1);
  const read = seen.reduce((sum, one) => sum + readingSd(one) ** 2, 0) / shots;
  // Where the shots agree better than their readings could, the reading error still stands in the mean's interval.
  const half = studentT95(shots - 1) * Math.sqrt(Math.max(variance, read) / shots);
  return { mean: { value, low: value - half, high: value + half }, spread: Math.sqrt(Math.max(0, variance - read)), shots };
}
