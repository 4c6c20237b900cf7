import { contours } from "d3-contour";
import type { Cells } from "#engine/surface/padWork/cells";
import type { Vector } from "#engine/vector";
import { simplified } from "./simplify.ts";
import type { Point } from "./svg.ts";

/** The half of the ball around the grip, or the one behind it, each seen from outside. */
export type Half = "grip" | "opposite";

/** One line of equal work. */
export interface Contour {
  readonly overMean: number;
  readonly line: readonly Point[];
  /** Where its figure stands, on the longest line of its level only. */
  readonly label: Point | null;
}

const LEVELS = [0.25, 0.5, 0.75, 0.9, 1.1, 1.25, 1.5, 2, 3] as const;
const GRID = 56;
/** The table reaches a little beyond the rim, so that no line ends short of it. */
const REACH = 1.06;
/** Cells within about 6° count; nearer ones more. */
const NEAR = Math.cos((8 * Math.PI) / 180);
const SHARPNESS = 400;
const LEAST_LINE = 24;
const TOLERANCE = 0.15;

/** A direction on the disc of a half, radius 1, y downwards as on paper; null if it lies on the other half. The rim belongs to both. */
export function onDisc([x, y, z]: Vector, half: Half): Point | null {
  const towards = half === "grip" ? z : -z;
  if (towards < -1e-9) return null;
  const scale = 1 / Math.sqrt(1 + towards);
  return [(half === "grip" ? x : -x) * scale, -y * scale];
}

/** The direction that lies at a point of the disc; beyond the rim that of the rim. */
export function fromDisc([px, py]: Point, half: Half): Vector {
  const size = Math.hypot(px, py);
  const inside = Math.min(1, size);
  const towards = 1 - inside * inside;
  const ring = Math.sqrt(Math.max(0, 1 - towards * towards));
  const [x, y] = size === 0 ? [0, 0] : [(px / size) * ring, (-py / size) * ring];
  return half === "grip" ? [x, y, towards] : [-x, y, -towards];
}

/** Lines of equal work over the mean on one half, in picture units around the middle of its disc. */
export function contoursOf(cells: Cells, work: Float64Array, half: Half, radius: number): Contour[] {
  const mean = work.reduce((sum, one) => sum + one, 0) / cells.count;
  if (mean === 0) return [];
  const table = Array.from({ length: GRID * GRID }, (_, i) => {
    const [column, row] = [i % GRID, Math.floor(i / GRID)];
    const at = fromDisc([gridPlace(column + 0.5), gridPlace(row + 0.5)], half);
    return smoothed(cells, work, at) / mean;
  });
  const taken: Point[] = [];
  return contours()
    .size([GRID, GRID])
    .thresholds([...LEVELS])(table)
    .flatMap(({ value, coordinates }) => {
      const lines = coordinates
        .flat()
        .flatMap((ring) =>
          insideDisc(
            ring.map(([x, y]): Point => [gridPlace(x) * radius, gridPlace(y) * radius]),
            radius,
          ),
        )
        .filter((line) => line.length > 1)
        .toSorted((a, b) => lengthOf(b) - lengthOf(a));
      return lines.map((line, i): Contour => {
        const label = i === 0 && lengthOf(line) > LEAST_LINE ? freePlace(line, taken, radius) : null;
        if (label !== null) taken.push(label);
        return { overMean: value, line: simplified(line, TOLERANCE), label };
      });
    });
}

function gridPlace(place: number): number {
  return ((2 * place) / GRID - 1) * REACH;
}

/** The mean of the cells around a direction, nearer ones counting more. */
function smoothed(cells: Cells, work: Float64Array, [x, y, z]: Vector): number {
  let [sum, weights] = [0, 0];
  for (let i = 0; i < cells.count; i++) {
    const [cx, cy, cz] = cells.at[i];
    const near = cx * x + cy * y + cz * z;
    if (near < NEAR) continue;
    const weight = Math.exp(SHARPNESS * (near - 1));
    sum += weight * work[i];
    weights += weight;
  }
  return weights === 0 ? 0 : sum / weights;
}

/** A ring cut at the rim into the pieces that lie on the disc. */
function insideDisc(ring: readonly Point[], radius: number): Point[][] {
  const pieces: Point[][] = [[]];
  for (const point of ring)
    if (Math.hypot(...point) <= radius * 1.01) pieces[pieces.length - 1].push(point);
    else if (pieces[pieces.length - 1].length > 0) pieces.push([]);
  return pieces;
}

function lengthOf(line: readonly Point[]): number {
  return line.reduce((sum, [x, y], i) => (i === 0 ? 0 : sum + Math.hypot(x - line[i - 1][0], y - line[i - 1][1])), 0);
}

/** A point of the line away from other figures, from the rim and from the middle, where the marks of the sides stand. */
function freePlace(line: readonly Point[], taken: readonly Point[], radius: number): Point | null {
  const free = line.filter(
    (point) =>
      Math.hypot(...point) < radius - 18 &&
      Math.hypot(...point) > 26 &&
      taken.every(([x, y]) => Math.abs(x - point[0]) > 24 || Math.abs(y - point[1]) > 13),
  );
  return free.length === 0 ? null : free[Math.floor(free.length / 2)];
}
