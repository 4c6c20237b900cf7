import type { Vector } from "../../vector.ts";
import type { Cells } from "./cells.ts";
import type { Received } from "./received.ts";
import { nearestSide, type SideId } from "./sides.ts";

/** How evenly work lies over a ball. */
export interface Evenness {
  /** Standard deviation of the work per area over its mean; 0 where every spot got the same. */
  readonly cv: number;
  /** Least and most worked spot over the mean. */
  readonly least: number;
  readonly most: number;
  /** Share of the ball that got less than half the mean. */
  readonly underHalf: number;
  /** How well scratches cross, averaged over the ball: 0 where all run one way, 1 where no direction is preferred. Axial statistics: 1 − resultant at twice the angle (Mardia & Jupp 2000, §3.6). */
  readonly crossing: number;
}

/** A ball that got nothing has cv 0 and crossing 0: there is nothing uneven on it, and nothing crosses. */
export function evennessOf({ work, cos2, sin2 }: Received): Evenness {
  const count = work.length;
  const mean = meanOf(work);
  if (mean === 0) return { cv: 0, least: 0, most: 0, underHalf: 1, crossing: 0 };
  let [square, least, most, under, crossing] = [0, Number.POSITIVE_INFINITY, 0, 0, 0];
  for (let i = 0; i < count; i++) {
    const share = work[i] / mean;
    square += (share - 1) ** 2;
    least = Math.min(least, share);
    most = Math.max(most, share);
    if (share < 0.5) under++;
    if (work[i] > 0) crossing += Math.max(0, 1 - Math.hypot(cos2[i], sin2[i]) / work[i]);
  }
  return { cv: Math.sqrt(square / count), least, most, underHalf: under / count, crossing: crossing / count };
}

export function meanOf(values: Float64Array): number {
  let sum = 0;
  for (const value of values) sum += value;
  return sum / values.length;
}

/** A spot that got too little: the middle of a low place, and where it lies. */
export interface ThinSpot {
  readonly at: Vector;
  readonly overMean: number;
  readonly side: SideId;
  readonly awayDeg: number;
}

const THIN = 0.75;
const APART = Math.cos(Math.PI / 6);
const MOST_SPOTS = 6;

/** The thinnest spots below three quarters of the mean, at least 30° from each other, the thinnest first. */
export function thinSpots(cells: Cells, work: Float64Array): ThinSpot[] {
  const mean = meanOf(work);
  if (mean === 0) return [];
  const spots: ThinSpot[] = [];
  for (const i of cells.at.map((_, k) => k).toSorted((a, b) => work[a] - work[b])) {
    const [x, y, z] = cells.at[i];
    if (work[i] / mean >= THIN || spots.length === MOST_SPOTS) break;
    if (spots.every(({ at }) => at[0] * x + at[1] * y + at[2] * z < APART))
      spots.push({ at: cells.at[i], overMean: work[i] / mean, ...nearestSide(cells.at[i]) });
  }
  return spots;
}
