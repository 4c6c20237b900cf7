import type { Pixel } from "./pinhole.ts";
import { brightnessAt, type Frame, peakBetween } from "./pixels.ts";

/** A shift by which drawn outlines fit the picture, and how alike the two then are, −1 to 1. */
export interface Match extends Pixel {
  readonly likeness: number;
}

/** Outlines smaller than this, px either way, cannot be told from noise. */
const LEAST_SIZE = 3;
const AROUND = 2;

/** Draws outlines as they would be seen and looks for them nearby by correlation (Lewis 1995). Null where they are too small or leave the picture. */
export function matchOutlines(
  frame: Frame,
  outlines: readonly (readonly Pixel[])[],
  within: number,
  kind: "bright" | "dark",
): Match | null {
  const points = outlines.flat();
  const [us, vs] = [points.map(({ u }) => u), points.map(({ v }) => v)];
  const box = {
    left: Math.floor(Math.min(...us)) - AROUND,
    right: Math.ceil(Math.max(...us)) + AROUND,
    top: Math.floor(Math.min(...vs)) - AROUND,
    bottom: Math.ceil(Math.max(...vs)) + AROUND,
  };
  const [wide, high] = [box.right - box.left, box.bottom - box.top];
  if (wide < LEAST_SIZE + 2 * AROUND || high < LEAST_SIZE + 2 * AROUND) return null;
  if (box.left < within || box.top < within || box.right > frame.width - within || box.bottom > frame.height - within) return null;
  const drawn = new Float64Array(wide * high);
  for (let i = 0; i < drawn.length; i++) drawn[i] = share(outlines, box.left + (i % wide), box.top + Math.floor(i / wide));
  const sign = kind === "bright" ? 1 : -1;
  const size = 2 * within + 1;
  const alike = new Float64Array(size * size);
  for (let i = 0; i < alike.length; i++) {
    alike[i] = sign * likeness(frame, drawn, wide, box.left + (i % size) - within, box.top + Math.floor(i / size) - within);
  }
  const best = alike.reduce((most, value, i) => (value > alike[most] ? i : most), 0);
  const [du, dv] = [best % size, Math.floor(best / size)];
  if (du === 0 || dv === 0 || du === size - 1 || dv === size - 1) return null;
  return {
    u: du - within + peakBetween(alike[best - 1], alike[best], alike[best + 1]),
    v: dv - within + peakBetween(alike[best - size], alike[best], alike[best + size]),
    likeness: alike[best],
  };
}

function likeness(frame: Frame, drawn: Float64Array, wide: number, left: number, top: number): number {
  let [sumD, sumP, sumDD, sumPP, sumDP] = [0, 0, 0, 0, 0];
  for (let i = 0; i < drawn.length; i++) {
    const seen = brightnessAt(frame, left + (i % wide) + 0.5, top + Math.floor(i / wide) + 0.5);
    sumD += drawn[i];
    sumP += seen;
    sumDD += drawn[i] * drawn[i];
    sumPP += seen * seen;
    sumDP += drawn[i] * seen;
  }
  const n = drawn.length;
  const spread = (sumDD - (sumD * sumD) / n) * (sumPP - (sumP * sumP) / n);
  return spread > 0 ? (sumDP - (sumD * sumP) / n) / Math.sqrt(spread) : 0;
}

/** Share of a pixel that lies inside any of the outlines, of sixteen points. */
function share(outlines: readonly (readonly Pixel[])[], u: number, v: number): number {
  let inside = 0;
  for (let i = 0; i < 16; i++) {
    const [x, y] = [u + (i % 4) / 4 + 0.125, v + Math.floor(i / 4) / 4 + 0.125];
    if (outlines.some((outline) => isInside(outline, x, y))) inside += 1;
  }
  return inside / 16;
}

/** By how often a line to the right crosses the outline. */
export function isInside(outline: readonly Pixel[], u: number, v: number): boolean {
  let inside = false;
  for (let i = 0, j = outline.length - 1; i < outline.length; j = i++) {
    const [a, b] = [outline[i], outline[j]];
    if (a.v > v !== b.v > v && u < a.u + ((v - a.v) * (b.u - a.u)) / (b.v - a.v)) inside = !inside;
  }
  return inside;
}
