import type { z } from "zod";
import { ARROW_IDS } from "#engine/delivery/arrows";
import { HOOK_WORD_IDS, SPEED_WORD_IDS } from "../job/bowler.ts";
import { mapping, oneOf, quantity, text } from "../job/fields.ts";
import { day, instant, keptAs, listOf, longText, MEASURED_HOW, maybe } from "./fields.ts";

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

const spread = mapping(
  {
    launchAngleDeg: maybe(quantity("deg", { from: 0, to: 10 }, "Of the launch angle")),
    laydownBoards: maybe(quantity("boards", { from: 0, to: 10 }, "Of the laydown board")),
    speedMph: maybe(quantity("mph", { from: 0, to: 10 }, "Of the launch speed")),
    revRateRpm: maybe(quantity("rpm", { from: 0, to: 300 }, "Of the rev rate")),
    axisRotationDeg: maybe(quantity("deg", { from: 0, to: 90 }, "Of the axis rotation")),
  },
  "The bowler's own variation from shot to shot, as standard deviations",
);

export const bowlerWritten = mapping(
  {
    name: text("Name"),
    phone: maybe(text("Telephone number, as the bowler writes it")),
    email: maybe(text("Address for electronic mail")),
    address: maybe(text("Postal address")),
    guardian: maybe(
      mapping(
        { name: text("Name of the guardian"), phone: maybe(text("Telephone number")), consentOn: maybe(day) },
        "For a bowler under age",
      ),
    ),
    hand: maybe(oneOf(["right", "left"], "The bowling hand")),
    grip: maybe(oneOf(["thumb", "no thumb", "two hands"], "How the ball is held")),
    /** Oldest first; the last one is today's. */
    deliveries: listOf(delivery, 500, "deliveries"),
    pap: maybe(
      mapping(
        { overIn: quantity("in", { from: -13.5, to: 13.5 }, "Over"), upIn: quantity("in", { from: -13.5, to: 13.5 }, "Up") },
        "Positive axis point",
      ),
    ),
    spread: maybe(spread),
    notes: longText,
    /** When the bowler's personal data were erased; the row then says nothing else. */
    erasedAt: maybe(instant),
  },
  "A bowler",
);
export const bowlerKept = keptAs(bowlerWritten);
export type BowlerWritten = z.input<typeof bowlerWritten>;
export type Bowler = z.output<typeof bowlerKept>;
