import type { z } from "zod";
import { ARROW_IDS } from "#engine/delivery/arrows";
import { HOOK_WORD_IDS, SPEED_WORD_IDS } from "../job/bowler.ts";
import { mapping, oneOf, quantity } from "../job/fields.ts";
import { BOWLER_FIELDS } from "./bowlerFields.ts";
import { shapeOf } from "./describedSchema.ts";
import { instant, keptAs, listOf, longText, MEASURED_HOW, maybe } from "./fields.ts";

const delivery = mapping(
  {
    at: instant,
    how: oneOf(MEASURED_HOW, "How the figures were come by"),
    speedMph: maybe(quantity("mph", { above: 0, to: 40 }, "Launch speed, at the foul line")),
    revRateRpm: maybe(quantity("rpm", { from: 0, to: 1000 }, "Rev rate at release")),
    axisRotationDeg: maybe(quantity("deg", { from: -180, to: 180 }, "Axis rotation")),
    axisTiltDeg: maybe(quantity("deg", { from: -90, to: 90 }, "Axis tilt")),
    speed: maybe(oneOf(SPEED_WORD_IDS, "Launch speed in a word")),
    hook: maybe(oneOf(HOOK_WORD_IDS, "How much it hooks, in a word")),
    /** Counted from the gutter of the bowler's own side. */
    plays: maybe(oneOf(ARROW_IDS, "Over which arrow the bowler plays")),
    note: longText,
  },
  "A bowler's delivery as it was at one time",
);

export const bowlerWritten = mapping(
  {
    ...shapeOf(BOWLER_FIELDS),
    /** Oldest first; the last one is today's. */
    deliveries: listOf(delivery, 500, "deliveries"),
    /** When the bowler's personal data were erased; the row then says nothing else. */
    erasedAt: maybe(instant),
  },
  "A bowler",
);
export const bowlerKept = keptAs(bowlerWritten);
export type BowlerWritten = z.input<typeof bowlerWritten>;
export type Bowler = z.output<typeof bowlerKept>;
