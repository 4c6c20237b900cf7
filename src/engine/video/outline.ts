import type { Vector } from "../vector.ts";
import { cross, length, unit } from "../vector.ts";
import { USUAL_RADIUS } from "./freeFriction.ts";
import { ballPlace, type Camera, outlineOf, type Pixel, project } from "./pinhole.ts";
import { colourAt, type Frame } from "./pixels.ts";
import { median } from "./robust.ts";

/** A ball's outline as the picture has it. */
export interface OutlineSeen extends Pixel {
  readonly radius: number;
  /** Larger than the known ball at its place, px. */
  readonly larger: number;
  /** How far ball and lane differ, grey levels: median over the rays. */
  readonly contrast: number;
}

/** Rays over the upper two thirds: below, the ball's mirror on the lane spoils the edge. */
const RAYS = 41;
const UPPER = (240 * Math.PI) / 180;
const STEPS = 48;
/** Along a ray, from the middle out, in radii. */
const [FROM, TO] = [0.35, 1.65];
const LEAST_RAYS = 15;
const ROUNDS = 4;

/** The rim of a ball at a place, evenly turned about the line of sight, from straight up both ways. */
function rimOf(camera: Camera, centre: Vector): Pixel[] {
  const towards: Vector = [camera.at[0] - centre[0], camera.at[1] - centre[1], camera.at[2] - centre[2]];
  const far = length(towards);
  const axis = unit(towards);
  const right = unit(cross(camera.forward, [0, 0, 1]));
  const up = cross(right, [-axis[0], -axis[1], -axis[2]]);
  const [before, wide] = [USUAL_RADIUS ** 2 / far, USUAL_RADIUS * Math.sqrt(1 - (USUAL_RADIUS / far) ** 2)];
  return Array.from({ length: RAYS }, (_, i) => {
    const turn = (i / (RAYS - 1) - 0.5) * UPPER;
    const [c, s] = [wide * Math.cos(turn), wide * Math.sin(turn)];
    return project(camera, [0, 1, 2].map((k) => centre[k] + before * axis[k] + c * up[k] + s * right[k]) as unknown as Vector);
  });
}

/**
 * The outline near a guess, by known radius: along each ray how much of a pixel is ball follows from what lies behind it there, so that a dark gutter behind
 * one half does not draw the middle over. Null where fewer than fifteen rays find an edge.
 */
export function outlineNear(frame: Frame, background: Frame, camera: Camera, guess: Pixel): OutlineSeen | null {
  let middle = guess;
  let larger = 0;
  let contrast = 0;
  for (let round = 0; round < ROUNDS; round++) {
    const place = ballPlace(camera, middle, USUAL_RADIUS);
    if (place === null) return null;
    const centre: Vector = [place.x, place.y, USUAL_RADIUS];
    const expected = outlineOf(camera, centre, USUAL_RADIUS);
    const edges = rimOf(camera, centre).flatMap((rim) => edgeAlong(frame, background, expected, rim) ?? []);
    if (edges.length < LEAST_RAYS) return null;
    const shift = shiftOf(edges);
    if (shift === null) return null;
    middle = { u: expected.u + shift.u, v: expected.v + shift.v };
    larger = shift.radius;
    contrast = median(edges.map((edge) => edge.contrast));
  }
  const place = ballPlace(camera, middle, USUAL_RADIUS);
  if (place === null) return null;
  const { radius } = outlineOf(camera, [place.x, place.y, USUAL_RADIUS], USUAL_RADIUS);
  return { ...middle, radius: radius + larger, larger, contrast };
}

interface Edge {
  readonly cos: number;
  readonly sin: number;
  /** Further out than the rim, px. */
  readonly off: number;
  readonly contrast: number;
}

function edgeAlong(frame: Frame, background: Frame, middle: Pixel, rim: Pixel): Edge | null {
  const [du, dv] = [rim.u - middle.u, rim.v - middle.v];
  const reach = Math.hypot(du, dv);
  const at = (share: number) => [middle.u + share * du, middle.v + share * dv] as const;
  const ball = [0.7, 0.76, 0.82].map((share) => colourAt(frame, ...at(share)));
  const inside = [0, 1, 2].map((k) => median(ball.map((colour) => colour[k])));
  let before = 1;
  for (let i = 1; i <= STEPS; i++) {
    const share = FROM + ((TO - FROM) * i) / STEPS;
    const here = at(share);
    const [seen, behind] = [colourAt(frame, ...here), colourAt(background, ...here)];
    let [top, bottom] = [0, 0];
    for (let k = 0; k < 3; k++) {
      const differs = inside[k] - behind[k];
      top += (seen[k] - behind[k]) * differs;
      bottom += differs * differs;
    }
    const covered = bottom > 0 ? top / bottom : 0;
    if (covered <= 0.5 && share > 0.8) {
      const between = before > covered ? (before - 0.5) / (before - covered) : 0;
      const found = share + ((between - 1) * (TO - FROM)) / STEPS;
      const contrast = Math.max(...[0, 1, 2].map((k) => Math.abs(inside[k] - behind[k])));
      return { cos: du / reach, sin: dv / reach, off: (found - 1) * reach, contrast };
    }
    before = covered;
  }
  return null;
}

/** Shift and growth of a circle by least squares with weights that let a ray that met something else count little. */
function shiftOf(edges: readonly Edge[]): { u: number; v: number; radius: number } | null {
  let [u, v, radius] = [0, 0, median(edges.map(({ off }) => off))];
  for (let round = 0; round < 6; round++) {
    const rest = edges.map(({ cos, sin, off }) => off - u * cos - v * sin - radius);
    const scale = Math.max(0.15, 1.5 * median(rest.map(Math.abs)));
    const weights = rest.map((one) => 1 / (1 + (one / scale) ** 2));
    const solved = solveThree(edges, weights);
    if (solved === null) return null;
    [u, v, radius] = solved;
  }
  return { u, v, radius };
}

function solveThree(edges: readonly Edge[], weights: readonly number[]): [number, number, number] | null {
  const rows = [new Float64Array(4), new Float64Array(4), new Float64Array(4)];
  edges.forEach(({ cos, sin, off }, i) => {
    const one = [cos, sin, 1, off];
    for (let a = 0; a < 3; a++) for (let b = 0; b < 4; b++) rows[a][b] += weights[i] * one[a] * one[b];
  });
  for (let a = 0; a < 3; a++) {
    if (Math.abs(rows[a][a]) < 1e-9) return null;
    for (let b = 0; b < 3; b++) {
      if (b === a) continue;
      const share = rows[b][a] / rows[a][a];
      for (let k = a; k < 4; k++) rows[b][k] -= share * rows[a][k];
    }
  }
  return [rows[0][3] / rows[0][0], rows[1][3] / rows[1][1], rows[2][3] / rows[2][2]];
}
