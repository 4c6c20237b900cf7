import { z } from "zod";
import { BALL_JOBS, COVER_IDS } from "#engine/ball/ball";
import { mapping, oneOf, quantity, text } from "./fields.ts";
import { finishField } from "./finishField.ts";

const RADIUS = { above: 0, to: 10 };

export const ballField = mapping(
  {
    name: text("What the ball is called in this shop").optional(),
    cover: oneOf(COVER_IDS, "The cover; left out where nobody knows it").optional(),
    job: oneOf(BALL_JOBS, "What the ball is in the bag for; decides what a good finish is").optional(),
    massLb: quantity("lb", { above: 0, to: 50 }, "Mass").optional(),
    diameterIn: quantity("in", { from: 2, to: 20 }, "Diameter").optional(),
    rgIn: quantity("in", RADIUS, "Low radius of gyration").optional(),
    differentialIn: quantity("in", { from: 0, to: 5 }, "High minus low radius of gyration").optional(),
    intermediateDifferentialIn: quantity(
      "in",
      { from: 0, to: 5 },
      "High minus middle radius of gyration, at most the differential",
    ).optional(),
    principalRgIn: z
      .tuple([quantity("in", RADIUS, "First"), quantity("in", RADIUS, "Second"), quantity("in", RADIUS, "Third")], {
        error: "three radii of gyration: [a, b, c], in",
      })
      .describe("Three radii of gyration as they stand, unsorted, instead of rgIn and the differentials; for single shots")
      .optional(),
    pinToPapIn: quantity("in", { from: 0, to: 13.5 }, "Pin to positive axis point, over the surface").optional(),
    drillingAngleDeg: quantity("deg", { from: -180, to: 180 }, "Drilling angle").optional(),
    finish: finishField.optional(),
    raMicroinch: quantity("µin", { above: 0, to: 1000 }, "A roughness reading (Ra) of today's surface").optional(),
  },
  "The ball",
).superRefine((ball, context) => {
  if (ball.differentialIn === undefined || ball.intermediateDifferentialIn === undefined) return;
  if (ball.intermediateDifferentialIn <= ball.differentialIn) return;
  context.addIssue({
    code: "custom",
    path: ["intermediateDifferentialIn"],
    message: `0 ≤ x ≤ ${ball.differentialIn} in, the differential`,
    input: ball.intermediateDifferentialIn,
  });
});

export type JobBall = z.output<typeof ballField>;
