import { cholesky, solveCholesky } from "../learning/matrix.ts";
import type { Calibrated } from "./calibrate.ts";
import { type FreeCourse, freeCourse, placeAt, USUAL_RADIUS } from "./freeFriction.ts";
import { type Fitted, jacobianAt, leastSquares, weightedProducts } from "./leastSquares.ts";
import { COURSE_SCALES, type CourseNumbers, deliveredOf, PRIOR_ROWS, usualNumbers, writePriors } from "./numbersOfCourse.ts";
import { type Camera, cameraOf, outlineOf } from "./pinhole.ts";
import { median } from "./robust.ts";
import type { BallSeen, TrackerErrors } from "./sightings.ts";

/** A course fitted to the pictures. */
export interface CourseFit {
  readonly numbers: CourseNumbers;
  readonly course: FreeCourse;
  readonly covariance: number[][];
  /** Standard deviations of a sighting, px, as the course leaves them. */
  readonly noise: Noise;
  /** Median distances from the course, px. */
  readonly medianPx: { readonly u: number; readonly v: number };
}

interface Noise {
  readonly u: number;
  readonly v: number;
}

/** What one fit stands on. */
interface Asked {
  readonly seen: readonly BallSeen[];
  readonly calibrated: Calibrated;
  readonly errors: TrackerErrors;
  /** −1 for a left-hander, whose lane is mirrored. */
  readonly side: 1 | -1;
}

/** What is held while the course is fitted, and is uncertain all the same: the camera, the tracker's own faults, the ball's radius. */
interface Held {
  readonly camera: Camera;
  readonly offU: number;
  readonly offV: number;
  readonly readout: number;
  readonly radius: number;
}

const USUAL_NOISE: Noise = { u: 0.2, v: 0.3 };
/** Sightings are nowhere believed to be better than this, px. */
const LEAST_NOISE = 0.03;
/** Balls of the rules are 8.500 to 8.595 in. */
const RADIUS_SD = 0.0004;
/** Residuals one after the other are not taken to be more alike than this. */
const MOST_ALIKE = 0.9;

/** Fits twice: the first tells how noisy the sightings are and how alike one after the other. */
export function fitCourse(asked: Asked, start: { foulLineTime: number; x: number; angle: number; speed: number }): CourseFit {
  const held = heldOf(asked, new Array<number>(asked.calibrated.numbers.length + 4).fill(0));
  const first = fitWith(asked, held, USUAL_NOISE, usualNumbers(start.foulLineTime, start.x, start.angle, start.speed));
  const again = fitWith(asked, held, noiseOf(first, USUAL_NOISE), first.numbers);
  const noise = noiseOf(again, noiseOf(first, USUAL_NOISE));
  const alike = { u: likeness(again, asked.seen, 0), v: likeness(again, asked.seen, 1) };
  const counted = { u: noise.u * widening(alike.u), v: noise.v * widening(alike.v) };
  const last = fitWith(asked, held, counted, again.numbers);
  return {
    numbers: last.numbers,
    course: freeCourse(deliveredOf(last.numbers)),
    covariance: wholeCovariance(asked, last, counted),
    noise,
    medianPx: { u: median(columnOf(last, 0).map(Math.abs)) * counted.u, v: median(columnOf(last, 1).map(Math.abs)) * counted.v },
  };
}

/** Held things at a number of their own units away from where they are held: the camera's numbers, then the faults. */
function heldOf({ calibrated, errors }: Asked, away: readonly number[]): Held {
  const cameraNumbers = calibrated.numbers.map((number, i) => number + away[i]);
  const [offU, offV, readout, radius] = away.slice(calibrated.numbers.length);
  return {
    camera: cameraOf(cameraNumbers, calibrated.camera.picture),
    offU,
    offV,
    readout: errors.readoutS + readout,
    radius: USUAL_RADIUS + radius,
  };
}

function fitWith(asked: Asked, held: Held, noise: Noise, start: readonly number[]): Fitted {
  return leastSquares({
    start,
    seen: 2 * asked.seen.length,
    scales: COURSE_SCALES,
    residuals: (numbers) => residualsOf(asked, held, noise, numbers),
  });
}

function residualsOf({ seen, side, calibrated }: Asked, held: Held, noise: Noise, numbers: CourseNumbers): Float64Array {
  const course = freeCourse(deliveredOf(numbers));
  const out = new Float64Array(2 * seen.length + PRIOR_ROWS);
  const { height } = calibrated.camera.picture;
  seen.forEach((ball, i) => {
    // A picture is read out line by line: the ball is seen later the further down it is.
    const { x, y } = placeAt(course, ball.t + (held.readout * ball.v) / height - numbers[0]);
    const outline = outlineOf(held.camera, [side * x, y, held.radius], held.radius);
    out[2 * i] = (outline.u + held.offU - ball.u) / noise.u;
    out[2 * i + 1] = (outline.v + held.offV - ball.v) / noise.v;
  });
  writePriors(numbers, out, 2 * seen.length);
  return out;
}

/** Residuals across (0) or down (1) the picture, in the noise they were fitted with. */
function columnOf({ residuals }: Fitted, which: 0 | 1): number[] {
  return Array.from({ length: (residuals.length - PRIOR_ROWS) / 2 }, (_, i) => residuals[2 * i + which]);
}

function noiseOf(fitted: Fitted, fittedWith: Noise): Noise {
  const spread = (which: 0 | 1) => 1.4826 * median(columnOf(fitted, which).map(Math.abs));
  return { u: Math.max(LEAST_NOISE, spread(0) * fittedWith.u), v: Math.max(LEAST_NOISE, spread(1) * fittedWith.v) };
}

/** Correlation of residuals in pictures one after the other, 0 to {@link MOST_ALIKE}. Large ones are cut: one that is wrong would hide it. */
function likeness(fitted: Fitted, seen: readonly BallSeen[], which: 0 | 1): number {
  const column = columnOf(fitted, which).map((value) => Math.max(-3, Math.min(3, value)));
  let products = 0;
  let squares = 0;
  for (let i = 1; i < seen.length; i++) {
    products += column[i] * column[i - 1];
    squares += (column[i] ** 2 + column[i - 1] ** 2) / 2;
  }
  return squares > 0 ? Math.max(0, Math.min(MOST_ALIKE, products / squares)) : 0;
}

/** Of n readings that follow one another as a first-order process with this correlation, n(1 − ρ)/(1 + ρ) count. */
function widening(alike: number): number {
  return Math.sqrt((1 + alike) / (1 - alike));
}

/** Covariance of the fit, and what the held things' uncertainty does to it: C + G C_held Gᵀ, G = −C Jᵀ J_held. */
function wholeCovariance(asked: Asked, fitted: Fitted, noise: Noise): number[][] {
  const { calibrated, errors } = asked;
  const lower = cholesky(weightedProducts(fitted.jacobian, fitted.jacobian, fitted.weights));
  const size = lower.length;
  const own = lower.map((_, i) =>
    solveCholesky(
      lower,
      lower.map((__, j) => (i === j ? 1 : 0)),
    ),
  );
  const faults = [errors.biasPx.u, errors.biasPx.v, errors.readoutWithinS, RADIUS_SD];
  const scales = [...calibrated.covariance.map((row, i) => Math.sqrt(row[i])), ...faults.map((fault) => Math.max(fault, 1e-6))];
  const heldJacobian = jacobianAt(
    { scales, residuals: (away) => residualsOf(asked, heldOf(asked, away), noise, fitted.numbers) },
    scales.map(() => 0),
  );
  const pulls = weightedProducts(fitted.jacobian, heldJacobian, fitted.weights);
  /** Columns of G, one a held thing. */
  const moved = scales.map((_, held) =>
    solveCholesky(
      lower,
      pulls.map((row) => -row[held]),
    ),
  );
  const covarianceHeld = (a: number, b: number) => {
    const cameras = calibrated.numbers.length;
    if (a < cameras && b < cameras) return calibrated.covariance[a][b];
    return a === b ? scales[a] ** 2 : 0;
  };
  for (let a = 0; a < scales.length; a++)
    for (let b = 0; b < scales.length; b++) {
      const together = covarianceHeld(a, b);
      if (together === 0) continue;
      for (let i = 0; i < size; i++) for (let j = 0; j < size; j++) own[i][j] += moved[a][i] * together * moved[b][j];
    }
  return own.map((row, i) => row.map((value, j) => (i === j ? value * (1 + 1e-9) : (value + own[j][i]) / 2)));
}
