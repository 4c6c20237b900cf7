import { z } from "zod";
import { finite } from "./documentParts.ts";
import { jobFileSchema } from "./job/jobFile.ts";

const sample = z.strictObject({
  yFt: finite,
  tS: finite,
  xM: finite,
  board: finite,
  velocityMps: z.tuple([finite, finite]),
  omegaRadps: z.tuple([finite, finite, finite]),
  entryAngleDeg: finite,
  offLane: z.boolean(),
});

const range = z.strictObject({ low: finite, high: finite }).nullable();

/** `gritwright shot FILE --json`: one shot. Positions, velocity and spin in true lane axes, boards from the bowler's hand side. */
export const shotDocumentSchema = z.strictObject({
  gritwright: z.literal(1),
  kind: z.literal("shot"),
  engineVersion: z.string(),
  seed: z.int(),
  inputs: z.custom<z.input<typeof jobFileSchema>>((value) => jobFileSchema.safeParse(value).success, { error: "a job file" }),
  defaults: z.array(z.string()),
  samples: z.array(sample),
  gutter: z.strictObject({ yFt: finite, side: z.enum(["left", "right"]) }).nullable(),
  phases: z.strictObject({
    hookStartFt: finite.nullable(),
    rollStartFt: finite.nullable(),
    breakpoint: z.strictObject({ board: finite, yFt: finite }),
    slipAtPinsMps: finite.nullable(),
    timeToPinsS: finite.nullable(),
    speedAtPinsMph: finite.nullable(),
  }),
  flare: z.strictObject({ toPinsIn: finite, to45FtIn: finite }),
  energy: z.strictObject({ startJ: finite, endJ: finite, slidingLossJ: finite, rollingLossJ: finite, residualJ: finite }),
  reachedPins: z.boolean(),
  /** Where nine worlds of ten have each figure; null where friction is given, and nothing is left to be unknown. */
  band: z
    .strictObject({
      worlds: z.int(),
      boardAtPins: range,
      entryAngleDeg: range,
      hookStartFt: range,
      breakpointBoard: range,
      breakpointFt: range,
      speedAtPinsMph: range,
    })
    .nullable(),
});

export type ShotDocument = z.output<typeof shotDocumentSchema>;
