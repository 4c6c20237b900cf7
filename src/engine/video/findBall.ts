import { LANE_EDGE } from "../lane/geometry.ts";
import { FOOT } from "../units.ts";
import { USUAL_RADIUS } from "./freeFriction.ts";
import { type Camera, type Outline, outlineOf } from "./pinhole.ts";
import type { Frame } from "./pixels.ts";

/** Where a ball may be in one picture. */
export interface Candidate {
  readonly u: number;
  readonly v: number;
  readonly x: number;
  readonly y: number;
  readonly score: number;
}

/** A place of the lane at which is looked, and the window of a ball there. */
interface Spot {
  readonly x: number;
  readonly y: number;
  readonly outline: Outline;
}

const EVERY = 0.5 * FOOT;
/** A pixel that differs from the background by more grey levels has something before it. */
const DIFFERS = 22;
const LEAST_SCORE = 0.55;
const MOST = 4;

/** Looks for something of a ball's size before the background, all over the lane. Made once for a film, since the spots are the same in each picture. */
export class BallFinder {
  readonly #background: Frame;
  readonly #spots: readonly Spot[];
  readonly #box: { left: number; top: number; wide: number; high: number };
  /** Sums over all pixels above and to the left. */
  readonly #sums: Int32Array;

  constructor(background: Frame, camera: Camera) {
    this.#background = background;
    const spots: Spot[] = [];
    for (let y = EVERY; y < 59.5 * FOOT; y += EVERY)
      for (let x = -LANE_EDGE; x <= LANE_EDGE; x += 0.3 * USUAL_RADIUS)
        spots.push({ x, y, outline: outlineOf(camera, [x, y, USUAL_RADIUS], USUAL_RADIUS) });
    const { width, height } = background;
    this.#spots = spots.filter(({ outline: { u, v, radius: r } }) => u - 2 * r > 0 && v - 2 * r > 0 && u + 2 * r < width && v + r < height);
    const all = this.#spots.map(({ outline }) => outline);
    const left = Math.floor(all.reduce((least, { u, radius }) => Math.min(least, u - 2 * radius), width));
    const right = Math.ceil(all.reduce((most, { u, radius }) => Math.max(most, u + 2 * radius), 0));
    const top = Math.floor(all.reduce((least, { v, radius }) => Math.min(least, v - 2 * radius), height));
    const bottom = Math.ceil(all.reduce((most, { v, radius }) => Math.max(most, v + radius), 0));
    this.#box = { left, top, wide: Math.max(0, right - left), high: Math.max(0, bottom - top) };
    this.#sums = new Int32Array((this.#box.wide + 1) * (this.#box.high + 1));
  }

  /** The best places, none of which lies in another. */
  find(frame: Frame): Candidate[] {
    this.#sum(frame);
    const found: Candidate[] = [];
    const scored = this.#spots
      .map((spot) => ({ spot, score: this.#score(spot.outline) }))
      .filter(({ score }) => score > LEAST_SCORE)
      .sort((a, b) => b.score - a.score);
    for (const { spot, score } of scored) {
      const { u, v, radius } = spot.outline;
      if (found.some((one) => Math.hypot(one.u - u, one.v - v) < 1.5 * radius)) continue;
      found.push({ u, v, x: spot.x, y: spot.y, score });
      if (found.length === MOST) break;
    }
    return found;
  }

  #sum({ rgb, width }: Frame): void {
    const { left, top, wide, high } = this.#box;
    const behind = this.#background.rgb;
    for (let row = 0; row < high; row++) {
      let inRow = 0;
      let at = 3 * ((top + row) * width + left);
      const above = row * (wide + 1);
      for (let column = 0; column < wide; column++, at += 3) {
        const differs = Math.max(
          Math.abs(rgb[at] - behind[at]),
          Math.abs(rgb[at + 1] - behind[at + 1]),
          Math.abs(rgb[at + 2] - behind[at + 2]),
        );
        if (differs > DIFFERS) inRow += 1;
        this.#sums[above + wide + 1 + column + 1] = this.#sums[above + column + 1] + inRow;
      }
    }
  }

  /** Share of a window's pixels that differ. */
  #share(u0: number, v0: number, u1: number, v1: number): number {
    const { left, top, wide } = this.#box;
    const [a, b] = [Math.round(u0) - left, Math.round(u1) - left];
    const [c, d] = [(Math.round(v0) - top) * (wide + 1), (Math.round(v1) - top) * (wide + 1)];
    const area = (b - a) * (Math.round(v1) - Math.round(v0));
    return area > 0 ? (this.#sums[d + b] - this.#sums[c + b] - this.#sums[d + a] + this.#sums[c + a]) / area : 0;
  }

  /** Full within, empty to both sides and above; below is the mirror. */
  #score({ u, v, radius: r }: Outline): number {
    const within = this.#share(u - 0.7 * r, v - 0.7 * r, u + 0.7 * r, v + 0.7 * r);
    if (within < LEAST_SCORE) return 0;
    const beside = Math.max(
      this.#share(u - 1.9 * r, v - 0.7 * r, u - 1.15 * r, v + 0.5 * r),
      this.#share(u + 1.15 * r, v - 0.7 * r, u + 1.9 * r, v + 0.5 * r),
      this.#share(u - 0.7 * r, v - 1.9 * r, u + 0.7 * r, v - 1.15 * r),
    );
    return within - beside;
  }
}
