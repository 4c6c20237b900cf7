import { evenPoints, normalDeviate } from "../random.ts";

/** What varies from shot to shot, in this order: launch angle, laydown, speed, rev rate, axis rotation. */
export const VARIED = 5;

/** A bowler's variation as standard normal deviates, `count × VARIED`, evenly spread: the same for every finish, so that differences are not noise. */
export function spreadSample(count: number, seed: number): Float64Array {
  return evenPoints(count, VARIED, seed).map(normalDeviate);
}
