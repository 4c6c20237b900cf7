import { z } from "zod";
import { type EventRules, MOMENTS, SURFACE_ACTS, SURFACE_ANSWERS } from "#engine/rules/events";
import type { OwnLimit } from "#engine/rules/limits";
import { type MeasuredBall, NOTHING_MEASURED, QUANTITIES } from "#engine/rules/measuredBall";
import { BOOK_IDS } from "#engine/rules/ruleBooks";
import { count, mapping, oneOf, quantity, text } from "../job/fields.ts";
import { JOB_FILE_VERSION } from "../job/jobFile.ts";

const day = (description: string) => z.iso.date({ error: "a date, 2026-05-31" }).describe(description).optional();
const yes = (description: string) => z.boolean({ error: "true or false" }).describe(description).optional();
const names = (description: string) =>
  z.array(text("A ball's name"), { error: "a list of names" }).max(5000, { error: "at most 5000 names" }).describe(description).optional();
const MOST_READINGS = 500;
const readings = (unit: string, range: { readonly above: number; readonly to: number }, description: string) =>
  z
    .array(quantity(unit, range, description), { error: "a list of readings" })
    .max(MOST_READINGS, { error: `at most ${MOST_READINGS} readings` })
    .optional();
const ounces = (description: string) => quantity("oz", { from: -16, to: 16 }, description).optional();
const holes = (description: string) => count("holes", { from: 0, to: 20 }, description).optional();

const ballField = mapping(
  {
    name: text("What the ball is called on the event's lists").optional(),
    massLb: quantity("lb", { above: 0, to: 40 }, "Mass").optional(),
    diametersIn: readings("in", { above: 0, to: 20 }, "Diameters in several directions"),
    circumferenceIn: quantity("in", { above: 0, to: 60 }, "Circumference").optional(),
    rgIn: quantity("in", { above: 0, to: 5 }, "Least radius of gyration").optional(),
    differentialIn: quantity("in", { from: 0, to: 1 }, "Total differential").optional(),
    intermediateIn: quantity("in", { from: 0, to: 1 }, "Intermediate differential").optional(),
    friction: quantity("", { from: 0, to: 2 }, "Friction of the ball on the lane").optional(),
    hardnessD: quantity("Shore D", { from: 0, to: 100 }, "Hardness").optional(),
    temperatureC: quantity("°C", { from: -40, to: 80 }, "Of the ball when its hardness was read").optional(),
    oilAbsorptionMinutes: quantity("min", { from: 0, to: 10_000 }, "Time to take up the test's oil").optional(),
    highPerformanceCore: yes("Whether the core counts as high performance"),
    raMicroinch: readings("µin", { above: 0, to: 1000 }, "Roughness (Ra)"),
    topBottomOz: ounces("Static balance, top against bottom"),
    sideOz: ounces("Static balance, side against side"),
    fingerThumbOz: ounces("Static balance, fingers against thumb"),
    balanceHoles: holes("Holes that are not for gripping"),
    gripHoles: holes("Holes for gripping"),
    unusedGripHoles: holes("Holes for gripping that are not used on every shot"),
    wholeSurface: yes("Whether the whole surface was prepared alike"),
    approvedOn: day("Day of the ball's approval"),
    madeOn: day("Day of making"),
  },
  "The ball as measured; what is left out is not checked",
);

const bound = quantity("", { from: -1e6, to: 1e6 }, "A bound in the unit of the quantity").optional();
const ownLimitField = mapping(
  {
    quantity: oneOf(QUANTITIES, "What is limited"),
    least: bound,
    most: bound,
    why: text("Who set it"),
  },
  "A limit that the event or the shop sets",
).superRefine(({ least, most }, context) => {
  if (least !== undefined || most !== undefined) return;
  context.addIssue({ code: "custom", message: "least, most or both", params: { reason: "onlyOneOf" } });
});

export const eventField = mapping(
  {
    name: text("The event"),
    limits: z.array(ownLimitField, { error: "a list of limits" }).max(50, { error: "at most 50 limits" }).optional(),
    approved: names("Balls that may be used; left out where there is no such list"),
    withdrawn: names("Balls that may not be used any more"),
    ballsMost: count("balls", { from: 1, to: 100 }, "Most balls that one bowler may enter").optional(),
    ballsEntered: count("balls", { from: 0, to: 100 }, "Balls that this bowler enters").optional(),
    surface: z
      .array(
        mapping(
          {
            act: oneOf(SURFACE_ACTS, "What is done to the surface"),
            moment: oneOf(MOMENTS, "When"),
            answer: oneOf(SURFACE_ANSWERS, "What the event says"),
          },
          "A rule on surfaces",
        ),
        { error: "a list of rules" },
      )
      .max(50, { error: "at most 50 rules" })
      .optional(),
  },
  "An event's own rules, which go before the book's",
);

/** What `limits` reads. */
export const limitsFileSchema = mapping(
  {
    gritwright: z.literal(JOB_FILE_VERSION, { error: String(JOB_FILE_VERSION) }).describe("Version of the file"),
    ball: ballField,
    book: oneOf(BOOK_IDS, "The rule book").optional(),
    on: day("Day of play"),
    event: eventField.optional(),
  },
  "A limits file",
);

export type LimitsFile = z.output<typeof limitsFileSchema>;

export function measuredBallOf({ ball: { name: _name, ...measured } }: LimitsFile): MeasuredBall {
  const given = Object.entries(measured).filter(([, value]) => value !== undefined);
  return { ...NOTHING_MEASURED, ...Object.fromEntries(given) };
}

export function eventRulesOf({ event }: { readonly event?: LimitsFile["event"] }): EventRules | null {
  if (event === undefined) return null;
  return {
    name: event.name,
    limits: (event.limits ?? []).map((limit): OwnLimit => ({ ...limit, least: limit.least ?? null, most: limit.most ?? null })),
    approved: event.approved ?? null,
    withdrawn: event.withdrawn ?? [],
    ballsMost: event.ballsMost ?? null,
    surface: event.surface ?? [],
  };
}
