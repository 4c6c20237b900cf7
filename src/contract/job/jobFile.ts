import { z } from "zod";
import { assumptionsField } from "./assumptions.ts";
import { ballField } from "./ball.ts";
import { bowlerField } from "./bowler.ts";
import { count, mapping, text } from "./fields.ts";
import { finishField } from "./finishField.ts";
import { houseField } from "./house.ts";
import { laneField } from "./lane.ts";
import { limitsField, lineField } from "./line.ts";
import { modelField } from "./model.ts";
import { readingsField } from "./readings.ts";
import { trialField } from "./trial.ts";

/** The version of the job file that this program reads and writes. */
export const JOB_FILE_VERSION = 1;

/** A job file: a bowler, a lane, a ball and what is asked of them. Only `gritwright`, `ball` and `lane` must be there, and of the ball nothing. */
export const jobFileSchema = mapping(
  {
    gritwright: z.literal(JOB_FILE_VERSION, { error: `${JOB_FILE_VERSION}` }).describe("Version of this file format"),
    seed: count("", { from: 0, to: 4294967295 }, "Seed of everything that is drawn at random").optional(),
    bowler: bowlerField.optional(),
    ball: ballField,
    lane: laneField,
    line: lineField.describe("The line played today; without it the best line of today's finish is taken").optional(),
    limits: limitsField.optional(),
    candidates: z
      .array(finishField, { error: "a list of finishes" })
      .min(1, { error: "1 to 24 finishes" })
      .max(24, { error: "1 to 24 finishes" })
      .describe("Finishes to compare; without them the cover's usual range")
      .optional(),
    reason: text("Why a candidate outside the cover's usual range is wanted").optional(),
    model: modelField.optional(),
    assumptions: assumptionsField.optional(),
    house: houseField.optional(),
    trial: trialField.optional(),
    readings: readingsField.optional(),
  },
  "A Gritwright job file",
);

/** A job file as it is written, by hand or by the page. */
export type JobFile = z.input<typeof jobFileSchema>;
/** A job file that has been checked: finishes are read, everything else is as written. */
export type CheckedJob = z.output<typeof jobFileSchema>;
