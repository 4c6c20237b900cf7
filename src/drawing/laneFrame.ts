import { scaleLinear } from "d3-scale";
import type { Hand } from "#engine/delivery/bowler";
import type { Point } from "./svg.ts";

/** Lying: foul line left, pins right. Upright, for a narrow page: foul line below, pins above. */
export type Layout = "lying" | "upright";

/** The ground a lane is drawn on: where a place on the lane falls in the picture. */
export interface LaneFrame {
  readonly layout: Layout;
  readonly hand: Hand;
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
  /** Feet drawn, from the foul line. */
  readonly toFt: number;
  /** Picture units a foot and a board. */
  readonly perFt: number;
  readonly perBoard: number;
  /** By the lane's own count: boards from the right edge, whoever bowls. */
  readonly fromRight: (ft: number, board: number) => Point;
  /** By the bowler's count: boards from the hand's side. */
  readonly fromHand: (ft: number, board: number) => Point;
  /** Picture units towards the right edge of the lane, as a direction. */
  readonly rightward: Point;
  /** Picture units towards the pins, as a direction. */
  readonly forward: Point;
}

/** Past the last row of pins. */
export const DRAWN_FT = 63.6;

/** Board width, in: 41.5 in over 39 boards (governing body's lane specification). */
const BOARD_IN = 41.5 / 39;

/** @param box where the lane lies in the picture, in picture units. */
export function laneFrame(layout: Layout, hand: Hand, box: { left: number; top: number; width: number; height: number }): LaneFrame {
  const lying = layout === "lying";
  const along = scaleLinear([0, DRAWN_FT], lying ? [box.left, box.left + box.width] : [box.top + box.height, box.top]);
  // Board 0.5 is the right edge: below when the lane lies, on the right when it stands.
  const across = scaleLinear([0.5, 39.5], lying ? [box.top + box.height, box.top] : [box.left + box.width, box.left]);
  const fromRight = (ft: number, board: number): Point => (lying ? [along(ft), across(board)] : [across(board), along(ft)]);
  return {
    layout,
    hand,
    ...box,
    toFt: DRAWN_FT,
    perFt: (lying ? box.width : box.height) / DRAWN_FT,
    perBoard: (lying ? box.height : box.width) / 39,
    fromRight,
    fromHand: (ft, board) => fromRight(ft, hand === "right" ? board : 40 - board),
    rightward: lying ? [0, 1] : [1, 0],
    forward: lying ? [1, 0] : [0, -1],
  };
}

/** How many times larger the lane is drawn across than along. */
export function stretch(frame: LaneFrame): number {
  return frame.perBoard / BOARD_IN / (frame.perFt / 12);
}
