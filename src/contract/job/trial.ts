import { z } from "zod";
import { mapping, quantity } from "./fields.ts";
import { finishField } from "./finishField.ts";

const MOST_SHOTS = 200;

/** Shots of a trial: one ball, one line, some finishes. */
export const trialShots = z
  .array(
    mapping(
      {
        finish: finishField,
        boardAtPins: quantity("", { from: 0, to: 40 }, "Board on which the ball met the pins, from the bowler's hand side"),
        sdBoards: quantity("boards", { above: 0, to: 10 }, "How well that could be read, standard deviation"),
        speedMph: quantity("mph", { from: 3, to: 40 }, "Speed off the hand; left out or null where nobody looked").nullish(),
      },
      "A shot that was seen",
    ),
    { error: "a list of shots" },
  )
  .min(1, { error: `1 to ${MOST_SHOTS} shots` })
  .max(MOST_SHOTS, { error: `1 to ${MOST_SHOTS} shots` })
  .describe("Shots thrown on one line");

/** What a job file keeps of a trial: the file of the trial itself may stand here as it is. */
export const trialField = mapping(
  { gritwright: z.literal(1, { error: "1" }).optional(), kind: z.literal("trial", { error: "trial" }).optional(), shots: trialShots },
  "Shots that were seen on the job's line, with one finish or several: the worlds of a plan are weighed by them",
);

/** A trial by itself, as open data. */
export const trialFileSchema = mapping(
  { gritwright: z.literal(1, { error: "1" }), kind: z.literal("trial", { error: "trial" }), shots: trialShots },
  "A trial: one ball, one line, where it arrived with each finish",
);

export type JobTrial = z.output<typeof trialField>;
