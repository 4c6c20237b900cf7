import { z } from "zod";
import { COVER_IDS } from "#engine/ball/ball";
import { ABRASIVE_IDS, type AbrasiveId } from "#engine/surface/abrasives";
import { count, mapping, oneOf, quantity, text } from "../job/fields.ts";
import { finishField } from "../job/finishField.ts";
import { JOB_FILE_VERSION } from "../job/jobFile.ts";

const version = z.literal(JOB_FILE_VERSION, { error: String(JOB_FILE_VERSION) }).describe("Version of the file");
const ra = quantity("µin", { above: 0, to: 1000 }, "A reading, Ra");

/** Readings of a ball by side, for `gritwright readings`. */
export const readingsFileSchema = mapping(
  {
    gritwright: version,
    ball: mapping(
      {
        name: text("What the ball is called in this shop").optional(),
        cover: oneOf(COVER_IDS, "The cover"),
        hardnessD: quantity("Shore D", { from: 40, to: 100 }, "Hardness, if measured").optional(),
      },
      "The ball",
    ),
    wanted: finishField,
    lastPad: z
      .enum(ABRASIVE_IDS as [AbrasiveId, ...AbrasiveId[]], { error: `one of ${ABRASIVE_IDS.join(", ")}` })
      .describe("What the last stage was done with"),
    sides: z
      .array(
        mapping(
          {
            side: text("Which side"),
            raMicroinch: z
              .array(ra, { error: "a list of readings" })
              .min(1, { error: "at least one reading" })
              .max(200, { error: "at most 200 readings" }),
          },
          "One side",
        ),
        { error: "a list of sides" },
      )
      .min(2, { error: "at least two sides" })
      .max(24, { error: "at most 24 sides" }),
  },
  "Readings by side",
);

/** A gauge study, crossed: every person measures every part equally often. For `gritwright gauge`. */
export const gaugeFileSchema = mapping(
  {
    gritwright: version,
    unit: text("Unit of the readings").optional(),
    tolerance: quantity("", { above: 0 }, "Width of the tolerance, in the same unit").optional(),
    readings: z
      .array(
        mapping(
          {
            part: text("Which part"),
            person: text("Who"),
            trial: count("", { from: 1, to: 1000 }, "Which time"),
            value: z.number({ error: "a number" }),
          },
          "One reading",
        ),
        { error: "a list of readings" },
      )
      .min(8, { error: "at least 8 readings" })
      .max(20000, { error: "at most 20000 readings" })
      .optional(),
    referencePiece: z
      .array(z.number({ error: "a number" }), { error: "a list of numbers" })
      .min(2, { error: "at least 2 readings" })
      .max(20000, { error: "at most 20000 readings" })
      .describe("Readings of one and the same piece, in order of time")
      .optional(),
  },
  "A gauge study, a reference piece's readings, or both",
).refine(({ readings, referencePiece }) => readings !== undefined || referencePiece !== undefined, {
  error: "readings or referencePiece",
  params: { reason: "onlyOneOf" },
});
