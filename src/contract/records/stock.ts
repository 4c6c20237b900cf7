import { z } from "zod";
import { mapping, oneOf, quantity, text } from "../job/fields.ts";
import { finishText, id, instant, keptAs, longText, maybe } from "./fields.ts";

/** A ball of known surface that others are compared with by sheen and touch. */
export const referenceBallWritten = mapping(
  {
    name: text("What it is called"),
    finish: maybe(finishText),
    raUm: maybe(quantity("µm", { from: 0, to: 100 }, "Ra")),
    measuredAt: maybe(instant),
    note: longText,
  },
  "A reference ball",
);
export const referenceBallKept = keptAs(referenceBallWritten);
export type ReferenceBallWritten = z.input<typeof referenceBallWritten>;
export type ReferenceBall = z.output<typeof referenceBallKept>;

/** Something the bench uses up. How much there is follows from its movements and is never written by hand. */
export const stockItemWritten = mapping(
  {
    name: text("What it is called in this shop"),
    kind: oneOf(["pad", "wet paper", "polish", "compound", "cleaner", "other"], "What it is"),
    number: maybe(quantity("", { above: 0, to: 100_000 }, "Number of the abrasive")),
    unit: oneOf(["uses", "pieces", "mL", "g"], "What its quantity counts"),
    /** Only the shop knows: null, and nothing poured or weighed leaves the stock by a stage. */
    perUse: maybe(quantity("", { above: 0, to: 10_000 }, "How much of it one stage takes, where it is poured or weighed")),
    reorderAt: maybe(quantity("", { from: 0, to: 1_000_000 }, "Quantity at which more is ordered")),
    state: oneOf(["in use", "no longer kept"], "Whether the shop still keeps it").default("in use"),
    note: longText,
  },
  "An item of the stock",
);
export const stockItemKept = keptAs(z.strictObject({ ...stockItemWritten.shape, quantity: z.number() }));
export type StockItemWritten = z.input<typeof stockItemWritten>;
export type StockItem = z.output<typeof stockItemKept>;

const CHANGE = 1_000_000;
/** Stock that came or went. Movements are never changed; a mistake is put right by another movement. */
export const stockMovementWritten = mapping(
  {
    stockItemId: id,
    at: instant,
    change: quantity("", { from: -CHANGE, to: CHANGE }, "Quantity, negative when it leaves"),
    why: oneOf(["delivered", "used", "counted", "thrown away", "sent back"], "Why"),
    stageDoneId: maybe(id),
    note: longText,
  },
  "A movement of the stock",
);
export const stockMovementKept = keptAs(stockMovementWritten);
export type StockMovementWritten = z.input<typeof stockMovementWritten>;
export type StockMovement = z.output<typeof stockMovementKept>;
