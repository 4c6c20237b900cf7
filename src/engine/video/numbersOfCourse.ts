import { boardToX } from "../lane/geometry.ts";
import { DEGREE, MPH, RPM } from "../units.ts";
import { type Delivered, KNOTS_FT } from "./freeFriction.ts";

/** What is looked for of a course, in this order; the last of it ln µ at the knots. */
export type CourseNumbers = readonly number[];

/** When the ball's middle is over the foul line, s, is the first: it has no prior of its own. */
const BEFORE_FRICTION = 6;

interface Prior {
  readonly mean: number;
  readonly sd: number;
}

/** Bowlers of every class. Wide: only where a part of the course is hidden do they say much. Chosen. */
const DELIVERY_PRIORS: readonly Prior[] = [
  { mean: 0, sd: 1000 },
  { mean: boardToX(20), sd: 0.3 },
  { mean: 2 * DEGREE, sd: 3 * DEGREE },
  { mean: 17.5 * MPH, sd: 3 * MPH },
  { mean: 320 * RPM, sd: 120 * RPM },
  { mean: 42 * DEGREE, sd: 20 * DEGREE },
];

/**
 * ln µ along the lane as courses of the full model met it (oil in front, dry behind, its end anywhere from 34 ft on), widened; `tied` is the correlation with the
 * knot before. `test/video` holds it against the model.
 */
export const FRICTION_PRIORS: readonly (Prior & { readonly tied: number })[] = [
  { mean: -4.3, sd: 0.35, tied: 0 },
  { mean: -4.3, sd: 0.35, tied: 0.97 },
  { mean: -4.3, sd: 0.35, tied: 0.97 },
  { mean: -4.25, sd: 0.4, tied: 0.93 },
  { mean: -4.1, sd: 0.6, tied: 0.88 },
  { mean: -3.8, sd: 0.8, tied: 0.87 },
  { mean: -3.4, sd: 0.95, tied: 0.85 },
  { mean: -2.75, sd: 0.95, tied: 0.8 },
  { mean: -2.25, sd: 0.75, tied: 0.85 },
  { mean: -1.95, sd: 0.5, tied: 0.88 },
  { mean: -1.8, sd: 0.4, tied: 0.85 },
];

export const PRIOR_ROWS = DELIVERY_PRIORS.length + FRICTION_PRIORS.length;

/** Over how much each number is uncertain when a course is seen; derivatives are taken over a share of it. */
export const COURSE_SCALES: readonly number[] = [0.003, 0.01, 0.1 * DEGREE, 0.1 * MPH, 20 * RPM, 4 * DEGREE, ...KNOTS_FT.map(() => 0.2)];

export function deliveredOf(numbers: CourseNumbers): Delivered {
  const [, x, angle, speed, spin, rotation] = numbers;
  return { x, angle, speed: Math.max(1, speed), spin, rotation, lnFriction: numbers.slice(BEFORE_FRICTION) };
}

export function usualNumbers(foulLineTime: number, x: number, angle: number, speed: number): number[] {
  return [foulLineTime, x, angle, speed, DELIVERY_PRIORS[4].mean, DELIVERY_PRIORS[5].mean, ...FRICTION_PRIORS.map(({ mean }) => mean)];
}

/** Writes how far the numbers lie from what is usual, in standard deviations, from a row on. */
export function writePriors(numbers: CourseNumbers, out: Float64Array, from: number): void {
  DELIVERY_PRIORS.forEach(({ mean, sd }, i) => {
    out[from + i] = (numbers[i] - mean) / sd;
  });
  let before = 0;
  FRICTION_PRIORS.forEach(({ mean, sd, tied }, i) => {
    const away = (numbers[BEFORE_FRICTION + i] - mean) / sd;
    out[from + BEFORE_FRICTION + i] = (away - tied * before) / Math.sqrt(1 - tied * tied);
    before = away;
  });
}
