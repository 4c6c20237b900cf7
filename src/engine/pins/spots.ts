/** The spots of the pins 1–10: x to the right of the lane's middle, y behind the head pin, in inches (published: 12 in apart, in equilateral rows). */
export const PIN_SPOTS_IN: readonly (readonly [x: number, y: number])[] = [1, 2, 3, 4].flatMap((row) =>
  Array.from({ length: row }, (_, i) => [12 * i - 6 * (row - 1), (row - 1) * 6 * Math.sqrt(3)] as const),
);
