/** The seven arrows lie on every fifth board, counted from the gutter of the bowler's own side; the fourth is in the middle (published). */
export const ARROW_IDS = ["1st", "2nd", "3rd", "4th", "farther in"] as const;
export type Arrow = (typeof ARROW_IDS)[number];

/** From the foul line to the middle of the arrows, which stand between 12 and 16 ft (USBC Equipment Specifications). */
export const ARROWS_FT = 14;

/** Boards over which a ball passes that is said to go over an arrow: two either way of it (common practice), and beyond the fourth what is left. */
export const ARROW_BOARDS: Readonly<Record<Arrow, readonly [from: number, to: number]>> = {
  "1st": [3, 7],
  "2nd": [8, 12],
  "3rd": [13, 17],
  "4th": [18, 22],
  "farther in": [23, 35],
};
