/** The seven arrows lie on every fifth board, counted from the gutter of the bowler's own side; the fourth is in the middle (published). */
export const ARROW_IDS = ["1st", "2nd", "3rd", "4th", "farther in"] as const;
export type Arrow = (typeof ARROW_IDS)[number];
