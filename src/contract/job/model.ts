import { z } from "zod";
import { mapping, oneOf, quantity } from "./fields.ts";

const part = quantity("", { from: -1, to: 1 }, "Part of the quaternion");

export const modelField = mapping(
  {
    motion: oneOf(["full", "averaged"], "The full rigid-body model, or the one averaged over the core's turning").optional(),
    slipRegularisationMps: quantity("m/s", { above: 0, to: 1 }, "Slip at which friction has 71 % of its full value").optional(),
    rollingResistance: quantity("", { from: 0, to: 1 }, "Coefficient of rolling resistance").optional(),
    startFt: quantity("ft", { from: 0, below: 59.5 }, "Where the shot begins; the laydown board counts there").optional(),
    gravity: quantity("m/s²", { above: 0, to: 100 }, "Acceleration of free fall").optional(),
    coreOrientation: z
      .tuple([part, part, part, part], { error: "four numbers [w, x, y, z]" })
      .refine((q) => Math.abs(Math.hypot(...q) - 1) < 1e-3, { error: "[w, x, y, z] of length 1" })
      .describe("Unit quaternion that turns the ball's principal axes into the lane's at the start; else drawn from the seed")
      .optional(),
  },
  "How a single shot is computed; a finish plan has its own models",
);

export type JobModel = z.output<typeof modelField>;
