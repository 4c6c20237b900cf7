import type { Cells } from "./cells.ts";

/** What each cell got. The directions are axial: a scratch has no head, so they are summed at twice their angle. */
export interface Received {
  /** Work per area, J/m². */
  readonly work: Float64Array;
  /** Work times the cosine and the sine of twice the scratch's angle to the cell's east. */
  readonly cos2: Float64Array;
  readonly sin2: Float64Array;
  /** Depth taken off, µm. */
  readonly depthUm: Float64Array;
}

export function nothingReceived(count: number): Received {
  const empty = () => new Float64Array(count);
  return { work: empty(), cos2: empty(), sin2: empty(), depthUm: empty() };
}

/** Adds work whose scratches run along a direction at a cell; the direction need not be of length 1. */
export function receive(into: Received, cells: Cells, i: number, work: number, umPerWork: number, x: number, y: number, z: number): void {
  into.work[i] += work;
  into.depthUm[i] += work * umPerWork;
  const [ex, ey, ez] = cells.east[i];
  const [nx, ny, nz] = cells.north[i];
  const east = ex * x + ey * y + ez * z;
  const north = nx * x + ny * y + nz * z;
  const square = east * east + north * north;
  if (square < 1e-24) return;
  into.cos2[i] += (work * (east * east - north * north)) / square;
  into.sin2[i] += (work * 2 * east * north) / square;
}

/** The sum of several sides' work. */
export function sumReceived(parts: readonly Received[], count: number): Received {
  const sum = nothingReceived(count);
  for (const part of parts)
    for (let i = 0; i < count; i++) {
      sum.work[i] += part.work[i];
      sum.cos2[i] += part.cos2[i];
      sum.sin2[i] += part.sin2[i];
      sum.depthUm[i] += part.depthUm[i];
    }
  return sum;
}
