import type { z } from "zod";
import { mapping, oneOf, text } from "../job/fields.ts";
import { finishText, id, instant, listOf, longText, maybe, plainCents, taxMillipercent } from "./fields.ts";
import { stockUse } from "./stageDone.ts";

export const LANE_SIDE_WAYS = ["hand, dry", "hand, wet"] as const;
export const LANE_SIDE_ENDS = ["handed back", "stays in the shop"] as const;

const BALL_ALLOWED = "the id of a ball, or what a ball is called that the records do not have";

/** Work done by hand beside the lane, told in one breath: this ball, that number, signed, handed back. */
export const laneSideWritten = mapping(
  {
    ballId: maybe(id),
    /** For a ball that was not found. One whose whole serial number is known is that ball all the same. */
    ballName: maybe(text("What the ball is called")),
    serial: maybe(text("Serial number, as it stands on the ball")),
    finishBefore: maybe(finishText),
    finish: finishText,
    what: text("What was done"),
    abrasive: maybe(text("The abrasive")),
    way: oneOf(LANE_SIDE_WAYS, "How it was worked"),
    doneAt: instant,
    used: listOf(stockUse, 20, "things used"),
    charge: maybe(
      mapping({ what: text("What is charged for"), eachCents: plainCents, taxMillipercent: taxMillipercent.default(0) }, "A charge"),
    ),
    /** Without a charge and a reason the work is still to be priced. */
    freeWhy: maybe(text("Why it is free")),
    whereTo: oneOf(LANE_SIDE_ENDS, "Where the ball went"),
    note: longText,
  },
  "Work done beside the lane",
).superRefine((written, context) => {
  if (written.ballId !== null || written.ballName !== null) return;
  context.addIssue({ code: "custom", path: ["ballId"], message: BALL_ALLOWED, input: null });
});
export type LaneSideWritten = z.input<typeof laneSideWritten>;
export type LaneSide = z.output<typeof laneSideWritten>;
