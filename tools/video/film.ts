import { spawn } from "node:child_process";
import { once } from "node:events";
import { deriveSeed } from "#engine/random";
import { FOOT } from "#engine/units";
import type { Vector } from "#engine/vector";
import { type Camera, outlineOf, project, rayOf } from "#engine/video/pinhole";
import { type Bytes, bareLane, byte, fill, LANE_TO_LANE, type Look, withPins } from "./lanePicture.ts";
import { type Chance, chanceOf, inventedShot, type Truth, truePlace } from "./shots.ts";
import { inventedCamera } from "./sightings.ts";

/** Everything about a film but the shot. Time in s. */
export interface Style {
  readonly fps: number;
  readonly look: Look;
  readonly ball: Vector;
  readonly shutter: number;
  readonly readout: number;
  readonly noise: number;
  readonly bowler: boolean;
  readonly neighbour: boolean;
  readonly lead: number;
}

export interface Film {
  readonly truth: Truth;
  readonly camera: Camera;
  readonly style: Style;
}

/** A film of a seed; what is asked for otherwise takes the place of what chance would give. */
export function inventedFilm(seed: number, otherwise: Partial<Style> = {}): Film {
  const chance = chanceOf(deriveSeed(seed, 9));
  const style: Style = {
    fps: chance.oneOf([60, 60, 30]),
    look: {
      wood: [chance.even(180, 225), chance.even(150, 190), chance.even(120, 160)],
      gloss: chance.even(0.5, 1.2),
      light: chance.even(0.7, 1.05),
      arrowsOnFt: chance.normal(0, 0.1),
      seed,
    },
    ball: [chance.even(20, 120), chance.even(15, 70), chance.even(20, 150)],
    shutter: chance.oneOf([1 / 100, 1 / 200, 1 / 400]),
    readout: chance.even(0.006, 0.014),
    noise: chance.even(2, 4),
    bowler: chance.even(0, 1) < 0.7,
    neighbour: chance.even(0, 1) < 0.5,
    lead: 0.5,
  };
  const truth = inventedShot(seed);
  // On the ball's side, as the page asks for: else the bowler hides the lane.
  return { truth, camera: inventedCamera(seed, truth.setup.bowler.hand === "right" ? 1 : -1), style: { ...style, ...otherwise } };
}

/** Draws a film picture by picture and has ffmpeg press it. */
export async function writeFilm(film: Film, path: string, seed: number): Promise<void> {
  const { picture } = film.camera;
  const encode = spawn(
    "ffmpeg",
    `-v error -y -f rawvideo -pix_fmt rgb24 -s ${picture.width}x${picture.height} -r ${film.style.fps} -i - -c:v libx264 -preset veryfast -crf 24 -pix_fmt yuv420p`
      .split(" ")
      .concat(path),
    { stdio: ["pipe", "inherit", "inherit"] },
  );
  for (const rgb of picturesOf(film, seed)) if (!encode.stdin.write(rgb)) await once(encode.stdin, "drain");
  encode.stdin.end();
  const [code] = await once(encode, "close");
  if (code !== 0) throw new Error(`ffmpeg ended with ${code}`);
}

function* picturesOf({ truth, camera, style }: Film, seed: number): Generator<Uint8Array> {
  const chance = chanceOf(deriveSeed(seed, 11));
  const bare = bareLane(camera, style.look);
  const standing = withPins(bare, camera, style.look, () => true);
  const fallen = withPins(bare, camera, style.look, (lane, pin) => lane !== 0 || pin === 9);
  const grain = grainOf(chance, style.noise);
  const toPins = truth.shot.phases.timeToPinsS ?? 2.4;
  const other = {
    x: LANE_TO_LANE * chance.oneOf([-1, 1]) + chance.even(-0.2, 0.2),
    start: chance.even(-0.6, 0.6),
    speed: chance.even(6.5, 8.5),
  };
  const pictures = Math.floor((style.lead + toPins + 0.4) * style.fps);
  for (let i = 0; i < pictures; i++) {
    const t = i / style.fps - style.lead;
    const from = t > toPins + 0.12 ? fallen : standing;
    const bytes: Bytes = { ...from, rgb: from.rgb.slice() };
    if (style.neighbour && t > other.start && (t - other.start) * other.speed < 18)
      drawBall(bytes, camera, [[other.x, (t - other.start) * other.speed, truth.radius]], truth.radius, [40, 90, 60], style.look);
    const centres = [1 / 6, 0.5, 5 / 6].map((share) => centreAt(truth, camera, style, t + share * style.shutter));
    const y = centres[1][1];
    if (y > -0.3 && y < 19) drawBall(bytes, camera, centres, truth.radius, style.ball, style.look);
    if (style.bowler) drawBowler(bytes, camera, truth, t);
    addGrain(bytes.rgb, grain, chance);
    yield bytes.rgb;
  }
}

/** The line of the picture in which the ball is, is read out later than the first: where it is by then. */
function centreAt(truth: Truth, camera: Camera, { readout }: Style, t: number): Vector {
  let late = 0;
  for (let i = 0; i < 3; i++) {
    const { x, y } = truePlace(truth.shot, t + late);
    late = (readout * Math.max(0, Math.min(camera.picture.height, project(camera, [x, y, truth.radius]).v))) / camera.picture.height;
  }
  const { x, y } = truePlace(truth.shot, t + late);
  return [x, y, truth.radius];
}

const LAMPS: readonly Vector[] = [
  [0.1, 0.35, 1],
  [-0.2, -0.8, 0.9],
];

/** A ball over its exposure: shaded by height, lamps' spots on it, its mirror and shadow on the lane. */
function drawBall(
  { width, height, rgb }: Bytes,
  camera: Camera,
  centres: readonly Vector[],
  radius: number,
  colour: Vector,
  look: Look,
): void {
  const outlines = centres.map((centre) => outlineOf(camera, centre, radius));
  const most = Math.max(...outlines.map((one) => one.radius)) + 3;
  const span = (values: number[], more: number, limit: number) =>
    [Math.max(0, Math.floor(Math.min(...values) - most)), Math.min(limit - 1, Math.ceil(Math.max(...values) + more))] as const;
  const [left, right] = span(
    outlines.map(({ u }) => u),
    most,
    width,
  );
  const [top, bottom] = span(
    outlines.map(({ v }) => v),
    2.8 * most,
    height,
  );
  const fine = most < 25 ? [1 / 6, 0.5, 5 / 6] : [0.25, 0.75];
  for (let v = top; v <= bottom; v++)
    for (let u = left; u <= right; u++) {
      const at = 3 * (v * width + u);
      const behind: Vector = [rgb[at], rgb[at + 1], rgb[at + 2]];
      const sum = [0, 0, 0];
      for (const du of fine)
        for (const dv of fine) {
          const ray = rayOf(camera, { u: u + du, v: v + dv });
          for (const centre of centres) {
            const seen = throughPixel(camera.at, ray, centre, radius, colour, look, behind);
            for (let k = 0; k < 3; k++) sum[k] += seen[k];
          }
        }
      const all = fine.length ** 2 * centres.length;
      for (let k = 0; k < 3; k++) rgb[at + k] = byte(sum[k] / all);
    }
}

function throughPixel(from: Vector, ray: Vector, centre: Vector, radius: number, colour: Vector, look: Look, behind: Vector): Vector {
  const direct = hit(from, ray, centre, radius);
  if (direct !== null) return ballColour(direct, ray, colour, look);
  const floor = -from[2] / ray[2];
  if (!(floor > 0)) return behind;
  const [dx, dy] = [from[0] + floor * ray[0] - centre[0], from[1] + floor * ray[1] - centre[1]];
  const dark = 1 - 0.5 * Math.exp(-(dx * dx + dy * dy) / (2 * (0.55 * radius) ** 2));
  const below = hit(from, ray, [centre[0], centre[1], -centre[2]], radius);
  const share = below === null ? 0 : Math.min(0.4, 0.28 * look.gloss);
  const mirrored = below === null ? behind : ballColour([below[0], below[1], -below[2]], ray, colour, look);
  return [0, 1, 2].map((i) => behind[i] * dark * (1 - share) + mirrored[i] * share) as unknown as Vector;
}

/** Where the surface is met: its normal, or null. */
function hit(from: Vector, ray: Vector, centre: Vector, radius: number): Vector | null {
  const [ox, oy, oz] = [from[0] - centre[0], from[1] - centre[1], from[2] - centre[2]];
  const a = ray[0] ** 2 + ray[1] ** 2 + ray[2] ** 2;
  const b = ox * ray[0] + oy * ray[1] + oz * ray[2];
  const inside = b * b - a * (ox * ox + oy * oy + oz * oz - radius * radius);
  if (inside <= 0) return null;
  const t = (-b - Math.sqrt(inside)) / a;
  return [(ox + t * ray[0]) / radius, (oy + t * ray[1]) / radius, (oz + t * ray[2]) / radius];
}

function ballColour(normal: Vector, ray: Vector, colour: Vector, { light }: Look): Vector {
  const shade = light * (0.35 + 0.65 * Math.max(0, 0.35 + 0.65 * normal[2]));
  const length = Math.hypot(...ray);
  let spot = 0;
  for (const lamp of LAMPS) {
    const far = Math.hypot(...lamp);
    const half = [0, 1, 2].map((i) => lamp[i] / far - ray[i] / length);
    const cosine = (normal[0] * half[0] + normal[1] * half[1] + normal[2] * half[2]) / Math.hypot(...half);
    spot += 190 * light * Math.max(0, cosine) ** 120;
  }
  return colour.map((c) => Math.min(255, c * shade + spot)) as unknown as Vector;
}

/** Somebody who lets go, stands a moment beside the ball's line and steps aside. */
function drawBowler(bytes: Bytes, camera: Camera, { setup, shot }: Truth, t: number): void {
  const side = setup.bowler.hand === "right" ? -1 : 1;
  const x = shot.samples[0].xM + side * (0.95 + 1.6 * Math.max(0, t - 1.2)) * FOOT;
  const y = (-1 + Math.min(0, t) * 9) * FOOT;
  const parts: readonly (readonly [Vector, readonly (readonly [number, number])[]])[] = [
    [
      [40, 45, 50],
      [
        [-0.3, 0],
        [-0.35, 2.6],
        [0.35, 2.6],
        [0.3, 0],
      ],
    ],
    [
      [150, 70, 60],
      [
        [-0.5, 2.4],
        [-0.55, 4.7],
        [0.55, 4.7],
        [0.45, 2.4],
      ],
    ],
    [
      [90, 70, 60],
      [
        [-0.28, 4.75],
        [-0.3, 5.4],
        [0, 5.75],
        [0.3, 5.4],
        [0.28, 4.75],
      ],
    ],
  ];
  if (y < camera.at[1] + 2 * FOOT) return;
  for (const [colour, outline] of parts)
    fill(
      bytes,
      outline.map(([a, z]) => project(camera, [x + a * FOOT, y, z * FOOT])),
      colour,
      1,
    );
}

/** Noise of the sensor, drawn once and laid on from another place each time. */
function grainOf(chance: Chance, noise: number): Int8Array {
  return Int8Array.from({ length: 1_000_003 }, () => Math.round(chance.normal(0, noise)));
}

function addGrain(rgb: Uint8Array, grain: Int8Array, chance: Chance): void {
  let at = Math.floor(chance.even(0, grain.length));
  for (let i = 0; i < rgb.length; i++) {
    rgb[i] = Math.max(0, Math.min(255, rgb[i] + grain[at]));
    at = at + 1 === grain.length ? 0 : at + 1;
  }
}
