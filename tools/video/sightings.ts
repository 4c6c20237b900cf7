import { boardToX, HEAD_PIN, LANE_EDGE } from "#engine/lane/geometry";
import { deriveSeed } from "#engine/random";
import { DEGREE, FOOT } from "#engine/units";
import type { LaneMark } from "#engine/video/calibrate";
import { type Camera, cameraOf, outlineOf, project } from "#engine/video/pinhole";
import type { BallSeen, Sightings, TrackerErrors } from "#engine/video/sightings";
import { type Chance, chanceOf, type Truth, truePlace } from "./shots.ts";

/** How sightings are made noisy. All px but the last. */
export interface Trouble {
  readonly noise: { readonly u: number; readonly v: number };
  /** A shift that all sightings share: standard deviation. */
  readonly bias: { readonly u: number; readonly v: number };
  readonly marks: number;
  /** Correlation of a picture's error with the last one's. */
  readonly alike: number;
}

export const NONE: Trouble = { noise: { u: 0, v: 0 }, bias: { u: 0, v: 0 }, marks: 0, alike: 0 };

/** Camera heights, stands and lenses of a shop; both ways up. @param side of the lane's middle on which it stands, 1 right, −1 left, 0 as it comes */
export function inventedCamera(seed: number, side: 1 | -1 | 0 = 0): Camera {
  const chance = chanceOf(seed);
  const long = chance.oneOf([1280, 1920, 1920]);
  const short = (long * 9) / 16;
  const picture = chance.oneOf([true, false]) ? { width: long, height: short } : { width: short, height: long };
  const focal = long / 2 / Math.tan((chance.even(50, 68) * DEGREE) / 2);
  const [behind, high, anywhere] = [chance.even(5, 15), chance.even(3.5, 7), chance.even(-2.5, 2.5)];
  const beside = side === 0 ? anywhere : side * (0.5 + 0.8 * Math.abs(anywhere));
  // Foul line and pins both in the picture, so far as that goes.
  const near = Math.atan(high / behind);
  const far = Math.atan(high / (60 + behind));
  const half = Math.atan(picture.height / 2 / focal);
  const lowest = Math.max(near - 0.9 * half, far - 0.5 * half);
  const pitch = Math.min(far + 0.85 * half, Math.max(lowest, (near + far) / 2));
  return cameraOf(
    [
      Math.log(focal),
      beside * FOOT,
      -behind * FOOT,
      high * FOOT,
      Math.atan2(chance.even(-0.6, 0.6) - beside, 40 + behind),
      pitch,
      chance.normal(0, 1.2) * DEGREE,
      chance.normal(0, 0.02),
    ],
    picture,
  );
}

const LANE_POINTS: readonly (readonly [number, number, number])[] = [
  ...[-1, 1].flatMap((side) => [0, 20, 40].map((ft) => [side * LANE_EDGE, ft * FOOT, 0] as const)),
  ...[5, 10, 15, 20, 25, 30, 35].map((board) => [boardToX(board), (15.75 - (Math.abs(20 - board) / 15) * 3.25) * FOOT, 0] as const),
  ...[-1.5, -0.5, 0, 0.5, 1.5].map((across) => [across * FOOT, HEAD_PIN + Math.abs(across) * Math.sqrt(3) * FOOT, 0] as const),
];

/** Foul line, edges, arrows and feet of pins as they are seen. Those outside the picture are not. */
export function marksOf(camera: Camera, chance: Chance, within: number): LaneMark[] {
  return LANE_POINTS.flatMap((at) => {
    const { u, v } = project(camera, at);
    if (u < 0 || v < 0 || u > camera.picture.width || v > camera.picture.height) return [];
    return [{ u: u + chance.normal(0, within), v: v + chance.normal(0, within), at }];
  });
}

/** What a tracker would see of a shot. */
export function sightingsOf(truth: Truth, camera: Camera, seed: number, trouble: Trouble, errors: TrackerErrors, fps = 60): Sightings {
  const chance = chanceOf(deriveSeed(seed, 3));
  const marks = marksOf(camera, chance, trouble.marks);
  const bias = { u: chance.normal(0, trouble.bias.u), v: chance.normal(0, trouble.bias.v) };
  const seen: BallSeen[] = [];
  let last = { u: 0, v: 0, r: 0 };
  const fresh = Math.sqrt(1 - trouble.alike ** 2);
  for (let t = chance.even(0, 1 / fps); ; t += 1 / fps) {
    const { x, y } = truePlace(truth.shot, t);
    if (y > 59.5 * FOOT) break;
    const outline = outlineOf(camera, [x, y, truth.radius], truth.radius);
    last = {
      u: trouble.alike * last.u + fresh * chance.normal(0, trouble.noise.u),
      v: trouble.alike * last.v + fresh * chance.normal(0, trouble.noise.v),
      r: chance.normal(0, trouble.noise.u),
    };
    const [u, v] = [outline.u + bias.u + last.u, outline.v + bias.v + last.v];
    const isInside = u > 0 && v > outline.radius && u < camera.picture.width && v < camera.picture.height - outline.radius;
    if (isInside) seen.push({ t, u, v, radius: outline.radius + last.r });
  }
  return { picture: camera.picture, hand: truth.setup.bowler.hand, marks, seen, errors };
}
