import { BOARD, boardToX, LANE_EDGE } from "#engine/lane/geometry";
import { FOOT } from "#engine/units";
import type { Vector } from "#engine/vector";
import { ARROWS, PINS, pinOutline } from "#engine/video/laneThings";
import { isInside } from "#engine/video/matchOutlines";
import { type Camera, project, rayOf } from "#engine/video/pinhole";

/** How a lane looks; colours 0–255, red, green, blue. */
export interface Look {
  readonly wood: Vector;
  readonly gloss: number;
  readonly light: number;
  /** Arrows further down the lane than drawn plans have them, ft. */
  readonly arrowsOnFt: number;
  readonly seed: number;
}

export const GUTTER = (9.25 / 12) * FOOT;
/** From lane to lane, with the strip between their gutters. */
export const LANE_TO_LANE = 2 * LANE_EDGE + 2 * GUTTER + 0.55 * FOOT;
const WALL = 63.2 * FOOT;
const CEILING = 11 * FOOT;

/** A picture in three bytes a pixel. */
export interface Bytes {
  readonly width: number;
  readonly height: number;
  readonly rgb: Uint8Array;
}

/** The lane without ball and pins: floor and walls by rays through each pixel. */
export function bareLane(camera: Camera, look: Look): Bytes {
  const { width, height } = camera.picture;
  const rgb = new Uint8Array(3 * width * height);
  const parts = [0.25, 0.75];
  for (let v = 0; v < height; v++)
    for (let u = 0; u < width; u++) {
      let [r, g, b] = [0, 0, 0];
      for (const du of parts)
        for (const dv of parts) {
          const seen = colourOf(camera.at, rayOf(camera, { u: u + du, v: v + dv }), look);
          [r, g, b] = [r + seen[0], g + seen[1], b + seen[2]];
        }
      const at = 3 * (v * width + u);
      rgb[at] = byte(r / 4);
      rgb[at + 1] = byte(g / 4);
      rgb[at + 2] = byte(b / 4);
    }
  return { width, height, rgb };
}

/** A copy with pins on it, and their mirrors. */
export function withPins(bare: Bytes, camera: Camera, look: Look, isUp: (lane: number, pin: number) => boolean): Bytes {
  const picture = { ...bare, rgb: bare.rgb.slice() };
  const white = [226, 222, 215].map((c) => c * look.light) as unknown as Vector;
  for (const lane of [-1, 1, 0])
    for (let pin = PINS.length - 1; pin >= 0; pin--) {
      if (!isUp(lane, pin)) continue;
      const outline = pinOutline([PINS[pin][0] + lane * LANE_TO_LANE, PINS[pin][1], 0]);
      fill(
        picture,
        outline.map(([x, y, z]) => project(camera, [x, y, -z])),
        [150, 150, 150],
        0.22 * look.gloss,
      );
      fill(
        picture,
        outline.map((point) => project(camera, point)),
        white,
        1,
      );
    }
  return picture;
}

export function byte(value: number): number {
  return Math.max(0, Math.min(255, Math.round(value)));
}

function colourOf(from: Vector, ray: Vector, look: Look): Vector {
  const down = -from[2] / ray[2];
  const [x, y] = [from[0] + down * ray[0], from[1] + down * ray[1]];
  if (!(ray[2] < -1e-6) || y > WALL) return beyond(from, ray);
  const length = Math.hypot(...ray);
  const lane = Math.floor(x / LANE_TO_LANE + 0.5);
  const onLane = x - lane * LANE_TO_LANE;
  const wet = Math.abs(onLane) < LANE_EDGE || y < 0;
  const mirror = wet ? Math.min(0.45, look.gloss * (0.04 + 0.6 * (1 + ray[2] / length) ** 14)) : 0;
  const mirrored = beyond([x, y, 0], [ray[0], ray[1], -ray[2]]);
  const floor = floorColour(onLane, lane, y / FOOT, look);
  return [0, 1, 2].map((i) => floor[i] * (1 - mirror) + mirrored[i] * mirror) as unknown as Vector;
}

function floorColour(x: number, lane: number, ft: number, { wood, light, arrowsOnFt, seed }: Look): Vector {
  const away = Math.abs(x);
  const shine = light * (0.92 + 0.08 * Math.cos(ft / 4));
  const tinted = (share: number): Vector => wood.map((c) => c * share * shine) as unknown as Vector;
  if (ft > 62.9) return [18, 18, 18];
  if (ft < -0.04) return tinted(1.08);
  if (ft < 0) return [30, 30, 30];
  if (away >= LANE_EDGE + GUTTER) return [95, 95, 95];
  if (away > LANE_EDGE) return [44, 44, 46].map((c) => c + 24 * Math.abs((away - LANE_EDGE) / GUTTER - 0.5)) as unknown as Vector;
  for (const [arrowX, arrowY] of ARROWS) {
    const tip = arrowY / FOOT + arrowsOnFt;
    const wide = 0.075 * FOOT * Math.max(0, Math.min(1, (tip - ft) / 0.5));
    if (ft < tip && ft > tip - 0.5 && Math.abs(x - arrowX) < wide) return tinted(0.33);
  }
  for (const board of [3, 5, 8, 11, 14, 26, 29, 32, 35, 37])
    if (Math.hypot(x - boardToX(board), (ft - 7) * FOOT) < 0.036 * FOOT) return tinted(0.35);
  const number = Math.floor((LANE_EDGE - x) / BOARD) + 7 * lane;
  return tinted(1 + 0.05 * Math.sin(12.9898 * (number + seed)));
}

/** Walls, lamps and the pit: what is behind, and what the lane mirrors. */
function beyond(from: Vector, ray: Vector): Vector {
  const wall = (WALL - from[1]) / Math.max(ray[1], 1e-6);
  const high = (from[2] + wall * ray[2]) / FOOT;
  if (high >= CEILING / FOOT) {
    const up = (CEILING - from[2]) / ray[2];
    const [x, y] = [from[0] + up * ray[0], (from[1] + up * ray[1]) / FOOT];
    const isLamp = ((y % 9) + 9) % 9 < 0.8 && Math.abs(((((x / FOOT) % 6) + 6) % 6) - 3) < 1.3;
    return isLamp ? [250, 248, 240] : [62, 62, 62];
  }
  if (high > 2.1 && high < 6.2) {
    const x = (from[0] + wall * ray[0]) / FOOT;
    return [130 + 60 * Math.cos(0.9 * x), 90 + 50 * Math.sin(2 * high), 110 + 60 * Math.sin(0.4 * x)];
  }
  return high > 6.2 ? [48, 48, 48] : [22, 22, 22];
}

/** Fills a polygon, edges smoothed by four lines of four points a pixel. */
export function fill({ width, height, rgb }: Bytes, points: readonly { u: number; v: number }[], colour: Vector, cover: number): void {
  const [us, vs] = [points.map(({ u }) => u), points.map(({ v }) => v)];
  const [left, right] = [Math.max(0, Math.floor(Math.min(...us))), Math.min(width - 1, Math.ceil(Math.max(...us)))];
  const [top, bottom] = [Math.max(0, Math.floor(Math.min(...vs))), Math.min(height - 1, Math.ceil(Math.max(...vs)))];
  for (let v = top; v <= bottom; v++)
    for (let u = left; u <= right; u++) {
      const share = cover * coverage(points, u, v);
      if (share === 0) continue;
      const at = 3 * (v * width + u);
      for (let i = 0; i < 3; i++) rgb[at + i] = byte(rgb[at + i] * (1 - share) + colour[i] * share);
    }
}

function coverage(points: readonly { u: number; v: number }[], u: number, v: number): number {
  const corners = [isInside(points, u, v), isInside(points, u + 1, v), isInside(points, u, v + 1), isInside(points, u + 1, v + 1)];
  if (corners.every((corner) => corner === corners[0])) return corners[0] ? 1 : 0;
  let inside = 0;
  for (let i = 0; i < 16; i++) if (isInside(points, u + (i % 4) / 4 + 0.125, v + Math.floor(i / 4) / 4 + 0.125)) inside += 1;
  return inside / 16;
}
