/** A picture in three bytes a pixel, red, green, blue, from its upper left corner. */
export interface Frame {
  readonly width: number;
  readonly height: number;
  readonly rgb: Uint8Array;
}

/** Brightness at a place between pixels, 0 to 255; outside the picture that of its rim. Pixel (0, 0) has its middle at (½, ½). */
export function brightnessAt({ width, height, rgb }: Frame, u: number, v: number): number {
  const x = Math.max(0, Math.min(width - 1.001, u - 0.5));
  const y = Math.max(0, Math.min(height - 1.001, v - 0.5));
  const [left, top] = [Math.floor(x), Math.floor(y)];
  const [right, down] = [x - left, y - top];
  const of = (column: number, row: number) => {
    const at = 3 * (row * width + column);
    return 0.3 * rgb[at] + 0.59 * rgb[at + 1] + 0.11 * rgb[at + 2];
  };
  const above = of(left, top) * (1 - right) + of(left + 1, top) * right;
  const below = of(left, top + 1) * (1 - right) + of(left + 1, top + 1) * right;
  return above * (1 - down) + below * down;
}

/** The three colours at a place between pixels. */
export function colourAt({ width, height, rgb }: Frame, u: number, v: number): [number, number, number] {
  const x = Math.max(0, Math.min(width - 1.001, u - 0.5));
  const y = Math.max(0, Math.min(height - 1.001, v - 0.5));
  const [left, top] = [Math.floor(x), Math.floor(y)];
  const [right, down] = [x - left, y - top];
  const at = 3 * (top * width + left);
  const next = at + 3 * width;
  const of = (k: number) =>
    (rgb[at + k] * (1 - right) + rgb[at + 3 + k] * right) * (1 - down) + (rgb[next + k] * (1 - right) + rgb[next + 3 + k] * right) * down;
  return [of(0), of(1), of(2)];
}

/** Place of the largest of three neighbouring values, from the middle one, by the parabola through them: −½ to ½. */
export function peakBetween(before: number, at: number, after: number): number {
  const bend = before - 2 * at + after;
  return bend < 0 ? Math.max(-0.5, Math.min(0.5, (before - after) / (2 * bend))) : 0;
}
