import { cross, unit, type Vector } from "../../vector.ts";

/** Points on the unit sphere, each standing for the same share of it, with two directions along the surface at each. */
export interface Cells {
  /** Even; cell `i` and cell `i + count/2` lie opposite each other. */
  readonly count: number;
  readonly at: readonly Vector[];
  readonly east: readonly Vector[];
  readonly north: readonly Vector[];
}

const GOLDEN_ANGLE = Math.PI * (3 - Math.sqrt(5));

/**
 * A Fibonacci lattice over half the sphere (González 2010, Math. Geosci. 42, 49) and its mirror through the centre, so that a diameter
 * has a cell at either end.
 *
 * @param count at least 2; an odd one is rounded up
 */
export function ballCells(count: number): Cells {
  const half = Math.ceil(count / 2);
  const upper = Array.from({ length: half }, (_, i): Vector => {
    const z = 1 - (i + 0.5) / half;
    const ring = Math.sqrt(1 - z * z);
    return [ring * Math.cos(i * GOLDEN_ANGLE), ring * Math.sin(i * GOLDEN_ANGLE), z];
  });
  const at = [...upper, ...upper.map(([x, y, z]): Vector => [-x, -y, -z])];
  const east = at.map(alongSurface);
  return { count: at.length, at, east, north: at.map((point, i) => cross(point, east[i])) };
}

function alongSurface(point: Vector): Vector {
  return unit(cross(Math.abs(point[2]) < 0.9 ? [0, 0, 1] : [1, 0, 0], point));
}
