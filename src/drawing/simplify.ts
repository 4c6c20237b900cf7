import type { Point } from "./svg.ts";

/**
 * The same line with fewer points: what lies within the tolerance of a straight stretch is left out (Ramer 1972,
 * Douglas & Peucker 1973). A contour along a straight shore has hundreds of points that nobody could see.
 *
 * @param tolerance in the points' own unit, ≥ 0
 */
export function simplified(points: readonly Point[], tolerance: number): Point[] {
  const keep = new Array<boolean>(points.length).fill(false);
  keep[0] = true;
  keep[points.length - 1] = true;
  const spans: [number, number][] = [[0, points.length - 1]];
  for (let span = spans.pop(); span !== undefined; span = spans.pop()) {
    const [from, to] = span;
    let [furthest, distance] = [-1, tolerance];
    for (let i = from + 1; i < to; i++) {
      const d = distanceFrom(points[i], points[from], points[to]);
      if (d > distance) [furthest, distance] = [i, d];
    }
    if (furthest < 0) continue;
    keep[furthest] = true;
    spans.push([from, furthest], [furthest, to]);
  }
  return points.filter((_, i) => keep[i]);
}

/** From a point to the straight stretch between two others; to the end itself where they are one place, as in a closed ring. */
function distanceFrom(p: Point, a: Point, b: Point): number {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const length = Math.hypot(dx, dy);
  if (length === 0) return Math.hypot(p[0] - a[0], p[1] - a[1]);
  return Math.abs(dx * (a[1] - p[1]) - dy * (a[0] - p[0])) / length;
}
