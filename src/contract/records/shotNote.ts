import { z } from "zod";
import { count, mapping, oneOf, quantity } from "../job/fields.ts";
import { finishText, id, instant, keptAs, listOf, longText, maybe } from "./fields.ts";

const board = quantity("", { from: -5, to: 45 }, "Board");
const PIN_ALLOWED = "a pin, 1 to 10";

/** Before its time, in its time, after it. */
export const TURNED = ["early", "right", "late"] as const;
/** On the head pin's far side of the pocket, in it, on the near side. */
export const ARRIVED = ["high", "flush", "light"] as const;

/** What the technician saw of one real shot. */
export const shotNoteWritten = mapping(
  {
    bowlerId: maybe(id),
    ballId: maybe(id),
    houseId: maybe(id),
    laneId: maybe(id),
    patternId: maybe(id),
    ticketId: maybe(id),
    at: instant,
    game: maybe(count("", { from: 1, to: 50 }, "Game of the set")),
    finish: maybe(finishText),
    /** When it turned, and how it came in at the pocket, as an eye sees it without figures. */
    turned: maybe(oneOf(TURNED, "When it turned")),
    arrived: maybe(oneOf(ARRIVED, "How it came in")),
    /** Boards at distances from the foul line. */
    boards: listOf(mapping({ atFt: quantity("ft", { from: 0, to: 60 }, "Distance from the foul line"), board }, "A place"), 20, "places"),
    breakpointBoard: maybe(board),
    breakpointFt: maybe(quantity("ft", { from: 0, to: 60 }, "Where the breakpoint lay")),
    speedMph: maybe(quantity("mph", { above: 0, to: 40 }, "Speed")),
    speedAt: maybe(oneOf(["launch", "pins"], "Where the speed was taken")),
    /** Pins left standing; an empty list is a strike, null is not noted. */
    leave: maybe(z.array(z.int({ error: PIN_ALLOWED }).min(1, { error: PIN_ALLOWED }).max(10, { error: PIN_ALLOWED })).max(10)),
    note: longText,
  },
  "A shot note",
);
export const shotNoteKept = keptAs(shotNoteWritten);
export type ShotNoteWritten = z.input<typeof shotNoteWritten>;
export type ShotNote = z.output<typeof shotNoteKept>;
