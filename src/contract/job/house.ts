import { z } from "zod";
import { ASSUMPTION_IDS, ASSUMPTIONS, type AssumptionId } from "#engine/assumptions";
import { ensemble } from "#engine/worlds/ensemble";
import { NIGHT, NIGHT_IDS } from "#engine/worlds/parameters";
import { count, mapping, quantity } from "./fields.ts";

const MOST_DRAWS = 1000;
const figure = z.number({ error: "a number" });

const MOST_WORLDS = 1000;
const figures = (of: number) => z.array(figure, { error: "a list of numbers" }).length(of, { error: `${of} numbers` });

/** A speed, a rev rate and an axis rotation. */
const hand = z.tuple(
  [
    quantity("mph", { above: 0, to: 40 }, "Speed"),
    quantity("rpm", { from: 0, to: 1300 }, "Rev rate"),
    quantity("°", { from: -180, to: 180 }, "Axis rotation"),
  ],
  {
    error: "speed, rev rate and axis rotation",
  },
);

const MOST_HANDS = 12;
const hands = z
  .array(hand, { error: "a list of hands" })
  .min(1, { error: `1 to ${MOST_HANDS} hands` })
  .max(MOST_HANDS, { error: `1 to ${MOST_HANDS} hands` });

/** Houses and hands that may have thrown the shots, in the worlds of an ensemble; of another ensemble they are passed over. */
const inWorlds = mapping(
  {
    ensemble: z.string({ error: "the digest of an ensemble" }).describe("In whose worlds"),
    bowlers: hands.describe("Whose hands: speed, rev rate and axis rotation as they were given"),
    worlds: z
      .array(
        mapping(
          {
            world: count("", { from: 0, to: MOST_WORLDS }, "Number of the world"),
            weight: quantity("", { from: 0, to: 1 }, "What it counts for"),
            lane: figures(NIGHT_IDS.length).describe(NIGHT_IDS.join(", ")),
            deliveries: hands.describe("Speed, rev rate and axis rotation as the shots show them, bowler by bowler"),
          },
          "A house and a hand in one world",
        ),
        { error: "a list of worlds" },
      )
      .min(1, { error: `1 to ${MOST_WORLDS} worlds` })
      .max(MOST_WORLDS, { error: `1 to ${MOST_WORLDS} worlds` }),
  },
  "What was learned in the worlds that plans draw from",
).superRefine(({ ensemble: digest, bowlers, worlds }, context) => {
  const wrong = (path: readonly (string | number)[], input: unknown, allowed: string): void =>
    context.addIssue({ code: "custom", path: ["worlds", ...path], message: allowed, input });
  if (worlds.every(({ weight }) => weight === 0)) wrong([0, "weight"], 0, "more than 0 for one of the worlds");
  const inUse = ensemble();
  worlds.forEach(({ world, lane, deliveries }, i) => {
    if (deliveries.length !== bowlers.length) wrong([i, "deliveries"], deliveries.length, `${bowlers.length}, one for every bowler`);
    if (digest === inUse.digest && world >= inUse.worlds.length)
      wrong([i, "world"], world, `0 to ${inUse.worlds.length - 1} of this ensemble`);
    NIGHT_IDS.forEach((id, k) => {
      const { low, high } = NIGHT[id];
      if (!(lane[k] >= low && lane[k] <= high)) wrong([i, "lane", k], lane[k], `${id}: ${low} to ${high}`);
    });
  });
});

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
      .describe("Draws in the middle world, each with a number for every id"),
    inWorlds: inWorlds.optional(),
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
