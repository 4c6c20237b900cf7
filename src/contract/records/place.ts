import { z } from "zod";
import { count, mapping, oneOf, text } from "../job/fields.ts";
import { houseField } from "../job/house.ts";
import { laneField } from "../job/lane.ts";
import { id, instant, keptAs, longText, maybe } from "./fields.ts";

/** What the shots seen in a house taught of it, and on which oil they were seen. It names no bowler. */
const taughtField = mapping({ at: instant, patternId: id, house: houseField }, "What the shots seen in the house taught");

/** A centre: its lanes share what the shot notes teach. */
export const houseWritten = mapping({ name: text("Name of the centre"), notes: longText, taught: maybe(taughtField) }, "A house");
export const houseKept = keptAs(houseWritten);
export type HouseWritten = z.input<typeof houseWritten>;
export type House = z.output<typeof houseKept>;

export const laneWritten = mapping(
  {
    houseId: id,
    number: count("", { from: 1, to: 200 }, "Number of the lane"),
    surface: maybe(oneOf(["wood", "synthetic"], "What the lane is made of")),
    notes: longText,
  },
  "A lane",
);
export const laneKept = keptAs(laneWritten);
export type LaneWritten = z.input<typeof laneWritten>;
export type Lane = z.output<typeof laneKept>;

const LANE_ALLOWED = "oil as in a job file's `lane`";
/** Oil as the machine lays it or as it was measured, written as the `lane` of a job file. */
export const patternWritten = mapping(
  {
    name: text("Name of the pattern"),
    houseId: maybe(id),
    oil: z
      .record(z.string(), z.unknown(), { error: LANE_ALLOWED })
      .refine((oil) => laneField.safeParse(oil).success, { error: LANE_ALLOWED }),
    notes: longText,
  },
  "A pattern",
);
export const patternKept = keptAs(patternWritten);
export type PatternWritten = z.input<typeof patternWritten>;
export type Pattern = z.output<typeof patternKept>;
