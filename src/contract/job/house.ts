import { z } from "zod";
import { ASSUMPTION_IDS, ASSUMPTIONS, type AssumptionId } from "#engine/assumptions";
import { count, mapping } from "./fields.ts";

const MOST_DRAWS = 1000;
const figure = z.number({ error: "a number" });

/** What `gritwright correct` has learned of a house: draws of some assumptions. */
export const houseField = mapping(
  {
    shots: count("shots", { from: 1, to: 1_000_000 }, "How many shots it rests on"),
    ids: z
      .array(z.enum(ASSUMPTION_IDS as [AssumptionId, ...AssumptionId[]], { error: "ids of assumptions" }), { error: "a list of ids" })
      .min(1, { error: "at least one id" })
      .describe("Which assumptions were learned"),
    draws: z
      .array(z.array(figure, { error: "a row of numbers" }), { error: "a list of rows" })
      .min(1, { error: `1 to ${MOST_DRAWS} rows` })
      .max(MOST_DRAWS, { error: `1 to ${MOST_DRAWS} rows` })
      .describe("Draws, each with a number for every id"),
  },
  "What was learned of the house, as gritwright correct writes it",
).superRefine(({ ids, draws }, context) => {
  draws.forEach((row, i) => {
    if (row.length !== ids.length)
      context.addIssue({ code: "custom", path: ["draws", i], message: `${ids.length} numbers, one for every id`, input: row });
    row.forEach((value, k) => {
      const id = ids[k];
      if (id === undefined) return;
      const { low, high } = ASSUMPTIONS[id];
      if (value >= low && value <= high) return;
      context.addIssue({ code: "custom", path: ["draws", i, k], message: `${low} ≤ x ≤ ${high}, the range of ${id}`, input: value });
    });
  });
});

export type JobHouse = z.output<typeof houseField>;
