import { FOOT, INCH } from "../units.ts";

/**
 * The lane, from the governing body's equipment specifications (USBC Equipment Specifications Manual): foul line to head pin
 * 60 ft, width 41.5 in (41–42 allowed), 39 boards of 41.5/39 in. Axes: x to the right, y down the lane, z up; x = 0 is the lane's centre.
 */
export const BOARDS = 39;
export const LANE_WIDTH = 41.5 * INCH;
export const BOARD = LANE_WIDTH / BOARDS;
export const HEAD_PIN = 60 * FOOT;
/** The plane in which a hit is stated: the ball's centre when it meets the head pin in the pocket. */
export const PINS_PLANE = 59.5 * FOOT;
/** The lane's half width: a ball whose centre is beyond it has left the lane. */
export const LANE_EDGE = LANE_WIDTH / 2;
/** The published pocket, board from the bowler's hand side. */
export const POCKET_BOARD = 17.5;

/** Lateral position of a (fractional) board counted from the right edge; the centre of board 20 is x = 0. */
export function boardToX(board: number): number {
  return (20 - board) * BOARD;
}

/** Fractional board, counted from the right edge, of a lateral position. */
export function xToBoard(x: number): number {
  return 20 - x / BOARD;
}
