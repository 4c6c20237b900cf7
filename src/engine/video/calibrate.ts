import { DEGREE, FOOT } from "../units.ts";
import type { Vector } from "../vector.ts";
import { covarianceOf, type Fitted, leastSquares } from "./leastSquares.ts";
import { CAMERA_NUMBERS, type Camera, type CameraNumbers, cameraOf, type Picture, type Pixel, project } from "./pinhole.ts";

/** A point of the lane whose place is known, and where it is seen. */
export interface LaneMark extends Pixel {
  readonly at: Vector;
  /** Of a point on an edge: the direction across it, the only one in which its place is known. Of unit length. */
  readonly across?: readonly [u: number, v: number];
}

export interface Calibrated {
  readonly numbers: CameraNumbers;
  readonly camera: Camera;
  readonly covariance: number[][];
  /** How far the marks lie beside where this camera would see them: standard deviation of one coordinate, px. */
  readonly markPx: number;
  /** How far each mark lies beside its place, px. */
  readonly offPx: readonly number[];
}

/** Fewer marks than this fit a camera that cannot be told to be wrong. */
export const LEAST_MARKS = 4;

/** Before anything is seen: a telephone on a stand or in a hand behind the bowler. Chosen, wide. */
const PRIOR = {
  focalOverLongSide: { mean: Math.log(0.95), sd: 0.4 },
  besideFt: { mean: 0, sd: 4 },
  behindFt: { mean: 9, sd: 6 },
  heightFt: { mean: 5, sd: 2.5 },
  yawDeg: { mean: 0, sd: 20 },
  pitchDeg: { mean: 8, sd: 15 },
  rollDeg: { mean: 0, sd: 2.3 },
  distortion: { mean: 0, sd: 0.03 },
} as const;

/** How well a mark is read before the marks themselves tell, px, and by how many readings that is believed. */
const USUAL_MARK_PX = 0.5;
const USUAL_READINGS = 3;

/** Starts: a fit from one side of the truth may end in a hollow. */
const STARTS = [0.7, 0.95, 1.5].flatMap((focal) => [4, 9, 16].map((behindFt) => ({ focal, behindFt })));

/** The camera from marks of the lane: least squares with priors from several starts, the best taken. @param marks {@link LEAST_MARKS} or more */
export function calibrate(picture: Picture, marks: readonly LaneMark[]): Calibrated {
  const first = bestOf(STARTS.map((start) => fitFrom(picture, marks, startNumbers(picture, marks, start), 3)));
  const markPx = markErrorOf(picture, marks, first.numbers);
  const last = fitFrom(picture, marks, first.numbers, markPx);
  return {
    numbers: last.numbers,
    camera: cameraOf(last.numbers, picture),
    covariance: covarianceOf(last),
    markPx,
    offPx: offOf(picture, marks, last.numbers),
  };
}

function bestOf(fits: readonly Fitted[]): Fitted {
  return fits.reduce((best, one) => (one.cost < best.cost ? one : best));
}

function offOf(picture: Picture, marks: readonly LaneMark[], numbers: CameraNumbers): number[] {
  const camera = cameraOf(numbers, picture);
  return marks.map((mark) => Math.hypot(...besidePlace(camera, mark)));
}

/** How far a mark lies beside its place: right and down, or across its edge. */
function besidePlace(camera: Camera, { at, u, v, across }: LaneMark): readonly [number, number] {
  const seen = project(camera, at);
  const [right, down] = [seen.u - u, seen.v - v];
  return across === undefined ? [right, down] : [right * across[0] + down * across[1], 0];
}

/** Variance of the residuals, with what is usual counted as a few readings more: with few marks the fit bends to them and says little of itself. */
function markErrorOf(picture: Picture, marks: readonly LaneMark[], numbers: CameraNumbers): number {
  const squares = offOf(picture, marks, numbers).reduce((sum, off) => sum + off * off, 0);
  const readings = marks.reduce((sum, { across }) => sum + (across === undefined ? 2 : 1), 0);
  const free = Math.max(0, readings - CAMERA_NUMBERS);
  return Math.sqrt((squares + USUAL_READINGS * USUAL_MARK_PX ** 2) / (free + USUAL_READINGS));
}

function priorsOf(picture: Picture): readonly { readonly mean: number; readonly sd: number }[] {
  const longSide = Math.max(picture.width, picture.height);
  const inMetres = ({ mean, sd }: { mean: number; sd: number }, sign = 1) => ({ mean: sign * mean * FOOT, sd: sd * FOOT });
  const inRadians = ({ mean, sd }: { mean: number; sd: number }) => ({ mean: mean * DEGREE, sd: sd * DEGREE });
  return [
    { mean: PRIOR.focalOverLongSide.mean + Math.log(longSide), sd: PRIOR.focalOverLongSide.sd },
    inMetres(PRIOR.besideFt),
    inMetres(PRIOR.behindFt, -1),
    inMetres(PRIOR.heightFt),
    inRadians(PRIOR.yawDeg),
    inRadians(PRIOR.pitchDeg),
    inRadians(PRIOR.rollDeg),
    PRIOR.distortion,
  ];
}

function fitFrom(picture: Picture, marks: readonly LaneMark[], start: readonly number[], markPx: number): Fitted {
  const priors = priorsOf(picture);
  const seen = 2 * marks.length;
  return leastSquares({
    start,
    seen,
    scales: priors.map(({ sd }) => 0.02 * sd),
    residuals: (numbers) => {
      const camera = cameraOf(numbers, picture);
      const out = new Float64Array(seen + priors.length);
      marks.forEach((mark, i) => {
        const [first, second] = besidePlace(camera, mark);
        out[2 * i] = first / markPx;
        out[2 * i + 1] = second / markPx;
      });
      priors.forEach(({ mean, sd }, i) => {
        out[seen + i] = (numbers[i] - mean) / sd;
      });
      return out;
    },
  });
}

/** Place and focal length supposed, the camera is turned so that the mark nearest to the picture's middle is seen where it was. */
function startNumbers(picture: Picture, marks: readonly LaneMark[], { focal, behindFt }: { focal: number; behindFt: number }): number[] {
  const fromMiddle = ({ u, v }: Pixel) => Math.hypot(u - picture.width / 2, v - picture.height / 2);
  const mark = marks.reduce((nearest, one) => (fromMiddle(one) < fromMiddle(nearest) ? one : nearest));
  const px = focal * Math.max(picture.width, picture.height);
  const [y, z] = [-behindFt * FOOT, PRIOR.heightFt.mean * FOOT];
  const along = mark.at[1] - y;
  return [
    Math.log(px),
    0,
    y,
    z,
    Math.atan2(mark.at[0], along) - Math.atan((mark.u - picture.width / 2) / px),
    Math.atan2(z - mark.at[2], along) - Math.atan((mark.v - picture.height / 2) / px),
    0,
    0,
  ];
}
