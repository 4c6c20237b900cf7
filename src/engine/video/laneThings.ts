import { boardToX, HEAD_PIN } from "../lane/geometry.ts";
import { FOOT, INCH } from "../units.ts";
import type { Vector } from "../vector.ts";

/** Tips of the arrows, boards 5 to 35 between 12 and 16 ft (USBC Equipment Specifications); how far down a lane has them differs. */
export const ARROWS: readonly (readonly [x: number, y: number])[] = [5, 10, 15, 20, 25, 30, 35].map((board) => [
  boardToX(board),
  (15.75 - (Math.abs(20 - board) / 15) * 3.25) * FOOT,
]);

/** Spots of the ten pins: an even triangle of 12 in from pin to pin. */
export const PINS: readonly (readonly [x: number, y: number])[] = [0, 1, 2, 3].flatMap((row) =>
  Array.from({ length: row + 1 }, (_, i) => [(i - row / 2) * 12 * INCH, HEAD_PIN + row * Math.sqrt(0.75) * 12 * INCH] as const),
);

/** Half width of a pin at a height, in (drawing of the governing body, from memory). */
const PIN_HALF_WIDTHS_IN: readonly (readonly [height: number, half: number])[] = [
  [0, 1.016],
  [0.75, 1.414],
  [2.25, 1.953],
  [4.5, 2.383],
  [5.875, 2.282],
  [7.25, 1.852],
  [8.625, 1.236],
  [10, 0.9],
  [11.75, 1.047],
  [13.5, 1.273],
  [14.5, 0.8],
  [15, 0],
];
export const PIN_OUTLINE = PIN_HALF_WIDTHS_IN.map(([height, half]) => [height * INCH, half * INCH] as const);

/** A pin's outline from the front, standing on its foot. */
export function pinOutline([x, y]: Vector): Vector[] {
  const side = (sign: 1 | -1) => PIN_OUTLINE.map(([height, half]): Vector => [x + sign * half, y, height]);
  return [...side(1), ...side(-1).reverse()];
}

/** An arrow as it lies on the lane: half a foot long, two inches wide at its back. */
export function arrowOutline([x, y]: readonly [number, number]): Vector[] {
  const wide = 0.075 * FOOT;
  return [
    [x, y, 0],
    [x + wide, y - 0.5 * FOOT, 0],
    [x - wide, y - 0.5 * FOOT, 0],
  ];
}
