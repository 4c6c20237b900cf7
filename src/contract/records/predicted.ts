import { z } from "zod";
import { mapping, oneOf, quantity } from "../job/fields.ts";
import { finishText, instant, maybe } from "./fields.ts";

const feet = quantity("ft", { from: 0, to: 70 }, "Distance from the foul line");
const board = quantity("boards", { from: -100, to: 140 }, "Board, from the bowler's hand side");
const change = { from: -100, to: 100 };
const POINTS = "2 to 60 places on the lane, each feet and board";

/** A ball's way down the lane, with as many places as a small picture needs. */
const course = mapping(
  {
    hookStartFt: maybe(feet),
    rollStartFt: maybe(feet),
    boardAtPins: maybe(board),
    points: z
      .array(z.tuple([feet, board], { error: POINTS }), { error: POINTS })
      .min(2, { error: POINTS })
      .max(60, { error: POINTS }),
  },
  "A course",
);

/** What the plan that was taken said the ball will do: kept with the ticket, so that the card handed over says no more than that. */
export const predicted = mapping(
  {
    madeAt: instant,
    from: finishText,
    to: finishText,
    hand: oneOf(["right", "left"], "The bowling hand"),
    /** On the line of before: how much later it starts to hook. */
    hookLaterFt: maybe(quantity("ft", change, "Later, negative earlier")),
    /** To the line that fits the new finish: how far further in it is laid down. */
    moveInBoards: quantity("boards", change, "Further in, negative further out"),
    /** On that line, against the line of before. */
    sharperDeg: maybe(quantity("deg", change, "Steeper into the pins, negative flatter")),
    oilFt: maybe(feet),
    was: course,
    now: course,
  },
  "What the plan said it will do",
);
export type Predicted = z.output<typeof predicted>;
