import { z } from "zod";
import { assumptionsField } from "./assumptions.ts";
import { ballField } from "./ball.ts";
import { bowlerField } from "./bowler.ts";
import { count, mapping, pair, quantity, text } from "./fields.ts";
import { finishField } from "./finishField.ts";
import { laneField } from "./lane.ts";
import { modelField } from "./model.ts";

/** The version of the job file that this program reads and writes. */
export const JOB_FILE_VERSION = 1;

const board = quantity("", { from: 0, to: 40 }, "Board");
const angle = quantity("deg", { from: -45, to: 45 }, "Launch angle, positive outward");
const BOARD_PAIR = "[least, most] with 0 ≤ least ≤ most ≤ 40";

/** A job file: a bowler, a lane, a ball and what is asked of them. Only `gritwright`, `ball.cover`, `ball.finish` and `lane` must be there. */
export const jobFileSchema = mapping(
  {
    gritwright: z.literal(JOB_FILE_VERSION, { error: `${JOB_FILE_VERSION}` }).describe("Version of this file format"),
    seed: count("", { from: 0, to: 4294967295 }, "Seed of everything that is drawn at random").optional(),
    bowler: bowlerField.optional(),
    ball: ballField,
    lane: laneField,
    line: mapping(
      {
        laydownBoard: quantity("", { from: 0, to: 40 }, "Board on which the ball is laid down, from the bowler's hand side"),
        launchAngleDeg: angle,
      },
      "The line played today; without it the best line of today's finish is taken",
    ).optional(),
    limits: mapping(
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
    ).optional(),
    candidates: z
      .array(finishField, { error: "a list of finishes" })
      .min(1, { error: "1 to 24 finishes" })
      .max(24, { error: "1 to 24 finishes" })
      .describe("Finishes to compare; without them the cover's usual range")
      .optional(),
    reason: text("Why a candidate outside the cover's usual range is wanted").optional(),
    model: modelField.optional(),
    assumptions: assumptionsField.optional(),
  },
  "A Gritwright job file",
);

/** A job file as it is written, by hand or by the page. */
export type JobFile = z.input<typeof jobFileSchema>;
/** A job file that has been checked: finishes are read, everything else is as written. */
export type CheckedJob = z.output<typeof jobFileSchema>;
