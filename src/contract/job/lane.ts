import { z } from "zod";
import { PATTERN_IDS } from "#engine/lane/patterns";
import { count, mapping, oneOf, quantity, text } from "./fields.ts";

const BOARD = { from: 1, to: 39 };
/** Foul line to head pin: no pattern is longer. */
const ALONG_FT = { from: 0, to: 60 };
const patternLength = quantity("ft", { above: 0, to: 60 }, "Length of the pattern; the lane has 60 ft to the head pin");

const pass = mapping(
  {
    direction: oneOf(["out", "back"], "Away from the foul line or back to it"),
    fromBoard: count("", BOARD, "First board, counted from the lane's right edge"),
    toBoard: count("", BOARD, "Last board, included"),
    times: count("", { from: 0, to: 100 }, "How many times the machine passes over this stretch"),
    perBoardMicrolitres: quantity("µL", { from: 0, to: 1000 }, "Oil laid on one board in one pass"),
    fromFt: quantity("ft", ALONG_FT, "Where the stretch begins"),
    toFt: quantity("ft", ALONG_FT, "Where it ends"),
  },
  "One row of the oil sheet",
).superRefine((row, context) => {
  if (row.fromBoard > row.toBoard) {
    context.addIssue({ code: "custom", path: ["toBoard"], message: `${row.fromBoard} ≤ x ≤ 39, at least fromBoard`, input: row.toBoard });
  }
  // Oil on a stretch of no length would be infinitely thick.
  if (row.fromFt === row.toFt) context.addIssue({ code: "custom", path: ["toFt"], message: "another place than fromFt", input: row.toFt });
});

const oilSheet = mapping(
  {
    name: text("What the sheet is called").optional(),
    lengthFt: patternLength,
    passes: z.array(pass, { error: "a list of passes" }).min(1, { error: "1 to 200 passes" }).max(200, { error: "1 to 200 passes" }),
    stated: mapping(
      {
        totalMl: quantity("mL", { above: 0, to: 500 }, "Total volume as the sheet states it").optional(),
        ratio: quantity("", { above: 0, to: 100 }, "Middle to outside as the sheet states it").optional(),
      },
      "What the sheet itself states, to be compared with what its passes add up to",
    ).optional(),
  },
  "The pattern as the oil machine lays it",
).superRefine((sheet, context) => {
  sheet.passes.forEach((row, index) => {
    for (const end of ["fromFt", "toFt"] as const) {
      if (row[end] <= sheet.lengthFt) continue;
      context.addIssue({
        code: "custom",
        path: ["passes", index, end],
        message: `0 ≤ x ≤ ${sheet.lengthFt} ft, the length of the pattern`,
        input: row[end],
      });
    }
  });
});

const filmPoints = mapping(
  {
    name: text("What the measurement is called").optional(),
    lengthFt: patternLength,
    unit: oneOf(["um", "units"], "What `film` counts: micrometres, or the trade's units of oil"),
    points: z
      .array(
        mapping(
          {
            board: quantity("", BOARD, "Board, counted from the lane's right edge"),
            ft: quantity("ft", ALONG_FT, "Distance from the foul line"),
            film: quantity("", { from: 0, to: 1000 }, "Film thickness there"),
          },
          "One measured place",
        ),
        { error: "a list of points" },
      )
      .min(1, { error: "1 to 4000 points" })
      .max(4000, { error: "1 to 4000 points" }),
  },
  "The pattern as film thickness measured on the lane",
);

const MU = { from: 0, to: 1 };

const friction = mapping(
  {
    constant: quantity("", MU, "The same friction everywhere").optional(),
    oil: quantity("", MU, "Friction before the change").optional(),
    dry: quantity("", MU, "Friction after the change").optional(),
    changeAtFt: quantity("ft", { from: -60, to: 120 }, "Middle of the change").optional(),
    widthFt: quantity("ft", { above: 0, to: 60 }, "Width of the change").optional(),
  },
  "Friction given outright, for mechanics alone: `constant`, or `oil`, `dry`, `changeAtFt` and `widthFt`",
).superRefine((given, context) => {
  const zoneKeys = ["oil", "dry", "changeAtFt", "widthFt"] as const;
  const zones = zoneKeys.filter((key) => given[key] !== undefined).length;
  const isOneForm = given.constant === undefined ? zones === zoneKeys.length : zones === 0;
  if (isOneForm) return;
  context.addIssue({
    code: "custom",
    message: "constant alone, or oil, dry, changeAtFt and widthFt together",
    input: given,
    params: { reason: "onlyOneOf" },
  });
});

const FORMS = ["pattern", "oilSheet", "filmPoints", "friction"] as const;

export const laneField = mapping(
  {
    pattern: z
      .enum(PATTERN_IDS, { error: `one of ${PATTERN_IDS.join(", ")}` })
      .describe("A named pattern")
      .optional(),
    oilSheet: oilSheet.optional(),
    filmPoints: filmPoints.optional(),
    friction: friction.optional(),
    playedShots: count("", { from: 0, to: 500 }, "Shots this bowler has already thrown on this pattern, along the same line").optional(),
  },
  "The lane: exactly one of pattern, oilSheet, filmPoints, friction",
).superRefine((lane, context) => {
  if (FORMS.filter((form) => lane[form] !== undefined).length === 1) return;
  context.addIssue({ code: "custom", message: `exactly one of ${FORMS.join(", ")}`, input: lane, params: { reason: "onlyOneOf" } });
});

export type JobLane = z.output<typeof laneField>;
