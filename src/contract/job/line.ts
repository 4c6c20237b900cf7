import type { z } from "zod";
import { mapping, pair, quantity } from "./fields.ts";

const board = quantity("", { from: 0, to: 40 }, "Board");
const angle = quantity("deg", { from: -45, to: 45 }, "Launch angle, positive outward");
const BOARD_PAIR = "[least, most] with 0 ≤ least ≤ most ≤ 40";

export const lineField = mapping(
  {
    laydownBoard: quantity("", { from: 0, to: 40 }, "Board on which the ball is laid down, from the bowler's hand side"),
    launchAngleDeg: angle,
  },
  "A line",
);

export const limitsField = mapping(
  {
    laydownBoard: pair(board, BOARD_PAIR, "Boards the bowler can lay the ball down on, [least, most]").optional(),
    launchAngleDeg: pair(
      angle,
      "[least, most] with −45 ≤ least ≤ most ≤ 45 deg",
      "Launch angles the bowler can play, [least, most]",
    ).optional(),
    breakpointBoard: pair(board, BOARD_PAIR, "Boards between which the breakpoint must lie, [least, most]").optional(),
  },
  "Lines the bowler can play",
);

export type JobLimits = z.output<typeof limitsField>;
