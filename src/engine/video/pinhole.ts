import { cross, type Vector } from "../vector.ts";

/** Size of the upright picture, px. Its middle is where the optical axis meets it. */
export interface Picture {
  readonly width: number;
  readonly height: number;
}

/**
 * A camera as the numbers that are looked for: logarithm of the focal length (px), place (m), yaw to the right, pitch downwards, roll (rad), radial distortion k₁.
 * Square pixels, one term of distortion: see docs/model/video.md.
 */
export type CameraNumbers = readonly number[];
export const CAMERA_NUMBERS = 8;
const [LN_FOCAL, AT_X, AT_Y, AT_Z, YAW, PITCH, ROLL, K1] = [0, 1, 2, 3, 4, 5, 6, 7];

/** The same, made ready for many points. */
export interface Camera {
  readonly picture: Picture;
  readonly focal: number;
  readonly at: Vector;
  readonly right: Vector;
  readonly down: Vector;
  readonly forward: Vector;
  readonly k1: number;
}

export interface Pixel {
  readonly u: number;
  readonly v: number;
}

/** What lies nearer to the camera's own plane than this is not projected, m: figures stay finite while a fit is on its way. */
const NEAREST = 0.05;

export function cameraOf(numbers: CameraNumbers, picture: Picture): Camera {
  const [sinYaw, cosYaw] = [Math.sin(numbers[YAW]), Math.cos(numbers[YAW])];
  const [sinPitch, cosPitch] = [Math.sin(numbers[PITCH]), Math.cos(numbers[PITCH])];
  const [sinRoll, cosRoll] = [Math.sin(numbers[ROLL]), Math.cos(numbers[ROLL])];
  const forward: Vector = [sinYaw * cosPitch, cosYaw * cosPitch, -sinPitch];
  const level: Vector = [cosYaw, -sinYaw, 0];
  const below = cross(forward, level);
  const right: Vector = [0, 1, 2].map((i) => cosRoll * level[i] + sinRoll * below[i]) as unknown as Vector;
  return {
    picture,
    focal: Math.exp(numbers[LN_FOCAL]),
    at: [numbers[AT_X], numbers[AT_Y], numbers[AT_Z]],
    right,
    down: cross(forward, right),
    forward,
    k1: numbers[K1],
  };
}

/** Where on the plane one unit away a pixel lies: the distortion is undone by fixed-point steps. */
function offPicture({ picture, focal, k1 }: Camera, { u, v }: Pixel): readonly [number, number] {
  const [bentX, bentY] = [(u - picture.width / 2) / focal, (v - picture.height / 2) / focal];
  let [x, y] = [bentX, bentY];
  for (let i = 0; i < 8; i++) {
    const straight = 1 / Math.max(0.2, 1 + k1 * (x * x + y * y));
    [x, y] = [bentX * straight, bentY * straight];
  }
  return [x, y];
}

/** How a ball is seen: the middle of its outline and the outline's mean radius. */
export interface Outline extends Pixel {
  readonly radius: number;
}

/**
 * A sphere's outline is an ellipse whose middle is not where the sphere's own middle is seen: q·q_z/(q_z² − R²) on the plane one unit away, for the cone that
 * touches the sphere. Half axes R/√(q_z² − R²) across and R√(q² − R²)/(q_z² − R²) outwards; their geometric mean is the radius.
 */
export function outlineOf(camera: Camera, centre: Vector, radius: number): Outline {
  const { at, right, down, forward, focal, k1, picture } = camera;
  const [dx, dy, dz] = [centre[0] - at[0], centre[1] - at[1], centre[2] - at[2]];
  const x = dx * right[0] + dy * right[1] + dz * right[2];
  const y = dx * down[0] + dy * down[1] + dz * down[2];
  const z = Math.max(NEAREST, dx * forward[0] + dy * forward[1] + dz * forward[2]);
  const deep = Math.max(z * z - radius * radius, NEAREST * NEAREST);
  const [nx, ny] = [(x * z) / deep, (y * z) / deep];
  const bent = focal * (1 + k1 * (nx * nx + ny * ny));
  const across = radius / Math.sqrt(deep);
  const outwards = (radius * Math.sqrt(x * x + y * y + deep)) / deep;
  return { u: picture.width / 2 + bent * nx, v: picture.height / 2 + bent * ny, radius: focal * Math.sqrt(across * outwards) };
}

/** A point is a ball without a size. */
export function project(camera: Camera, point: Vector): Pixel {
  return outlineOf(camera, point, 0);
}

/** Direction in which a pixel looks, not of unit length: one unit along the optical axis. */
export function rayOf(camera: Camera, pixel: Pixel): Vector {
  const [x, y] = offPicture(camera, pixel);
  const { right, down, forward } = camera;
  return [x * right[0] + y * down[0] + forward[0], x * right[1] + y * down[1] + forward[1], x * right[2] + y * down[2] + forward[2]];
}

/** Where on the lane the ball lies whose outline has its middle here: its own middle is one radius above the lane; null where the ray does not meet that plane. */
export function ballPlace(camera: Camera, pixel: Pixel, radius: number): { readonly x: number; readonly y: number } | null {
  const [nx, ny] = offPicture(camera, pixel);
  const { at, right, down, forward } = camera;
  let shrink = 1;
  let away = 0;
  let ray: Vector = forward;
  for (let i = 0; i < 4; i++) {
    ray = [0, 1, 2].map((k) => nx * shrink * right[k] + ny * shrink * down[k] + forward[k]) as unknown as Vector;
    if (ray[2] > -1e-6) return null;
    away = (at[2] - radius) / -ray[2];
    shrink = 1 - (radius / Math.max(away, 2 * radius)) ** 2;
  }
  return away > 0 ? { x: at[0] + away * ray[0], y: at[1] + away * ray[1] } : null;
}
