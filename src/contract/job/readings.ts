import { z } from "zod";
import { mapping, quantity } from "./fields.ts";
import { finishField } from "./finishField.ts";

const MOST_READINGS = 100;

/** What a shop's tester read on balls fresh from its bench. */
export const readingsField = z
  .array(
    mapping(
      { finish: finishField, raMicroinch: quantity("µin", { from: 0.5, to: 500 }, "Mean of the ball's sides, right after the work") },
      "A ball fresh from the bench",
    ),
    { error: "a list of readings" },
  )
  .max(MOST_READINGS, { error: `at most ${MOST_READINGS} readings` })
  .describe("What the shop's tester read on balls fresh from its bench, this one or others: the worlds of a plan are weighed by it");
