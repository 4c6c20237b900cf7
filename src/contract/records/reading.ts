import type { z } from "zod";
import { mapping, oneOf, quantity, text } from "../job/fields.ts";
import { id, instant, keptAs, longText, maybe } from "./fields.ts";

/** One look at one place of a ball's surface, with a tester or by comparison with a reference ball. */
export const readingWritten = mapping(
  {
    ballId: id,
    ticketId: maybe(id),
    at: instant,
    when: oneOf(["before", "after", "between"], "Before the work, after it, or between visits"),
    place: text("Which side, the track, or off the track"),
    how: oneOf(["tester", "reference ball", "durometer", "scale", "calliper"], "What it was measured with"),
    raUm: maybe(quantity("µm", { from: 0, to: 100 }, "Ra")),
    rzUm: maybe(quantity("µm", { from: 0, to: 1000 }, "Rz")),
    rsmUm: maybe(quantity("µm", { from: 0, to: 10_000 }, "RSm")),
    /** By sheen and touch: duller than the reference ball, the same, or smoother. */
    comparison: maybe(oneOf(["duller", "the same", "smoother"], "Against the reference ball")),
    referenceBallId: maybe(id),
    profileFileId: maybe(id),
    /** The reading that this one takes back; it says nothing else. */
    takesBack: maybe(id),
    hardnessShoreD: maybe(quantity("Shore D", { from: 0, to: 100 }, "Hardness")),
    massLb: maybe(quantity("lb", { above: 0, to: 50 }, "Mass")),
    diameterIn: maybe(quantity("in", { from: 2, to: 20 }, "Diameter")),
    note: longText,
  },
  "A reading",
);
export const readingKept = keptAs(readingWritten);
export type ReadingWritten = z.input<typeof readingWritten>;
export type Reading = z.output<typeof readingKept>;
