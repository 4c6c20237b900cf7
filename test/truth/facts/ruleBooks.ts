import { limitsOf } from "#engine/rules/limits";
import { type MeasuredBall, NOTHING_MEASURED } from "#engine/rules/measuredBall";
import { EIGHT_MORE_FROM_MICROINCH, HARDNESS_TEST_C } from "#engine/rules/ruleBooks";
import type { Fact, Provenance } from "../fact.ts";

/** A 15 lb ball, measured all over, well inside everything; each fact changes what it needs. */
const BALL: MeasuredBall = {
  ...NOTHING_MEASURED,
  massLb: 15,
  diametersIn: [8.59, 8.59],
  circumferenceIn: 26.99,
  rgIn: 2.5,
  differentialIn: 0.04,
  intermediateIn: 0.01,
  friction: 0.2,
  hardnessD: 80,
  temperatureC: 23,
  oilAbsorptionMinutes: 20,
  highPerformanceCore: true,
  raMicroinch: [20],
  topBottomOz: 0,
  sideOz: 0,
  fingerThumbOz: 0,
  balanceHoles: 0,
  gripHoles: 3,
  unusedGripHoles: 0,
  wholeSurface: true,
};

type End = "least" | "most";
interface Row {
  readonly topic: string;
  readonly end: End;
  readonly known: number;
  readonly unit: string;
  readonly on: string;
  readonly provenance?: Provenance;
  readonly ball?: Partial<MeasuredBall>;
}

function row({ topic, end, known, unit, on, provenance = "published", ball = {} }: Row): Fact {
  const measured = { ...BALL, approvedOn: on, madeOn: on, ...ball };
  return {
    topic: "rule book",
    says: `${topic}, ${end} allowed on ${on}`,
    source: "USBC Equipment Specifications",
    provenance,
    unit,
    known,
    within: 0,
    predict: () => limitsOf(measured, "usbc", on).find((one) => one.topic === topic)?.[end] ?? Number.NaN,
  };
}

const NOW = "2026-05-31";
const holed = { balanceHoles: 1 };

export const RULE_BOOK_FACTS: readonly Fact[] = [
  row({ topic: "mass", end: "most", known: 16, unit: "lb", on: NOW }),
  row({ topic: "diameter", end: "least", known: 8.5, unit: "in", on: NOW }),
  row({ topic: "diameter", end: "most", known: 8.595, unit: "in", on: NOW }),
  row({ topic: "circumference", end: "least", known: 26.704, unit: "in", on: NOW }),
  row({ topic: "circumference", end: "most", known: 27.002, unit: "in", on: NOW }),
  row({ topic: "roundness", end: "most", known: 0.01, unit: "in", on: NOW, provenance: "memory" }),
  row({ topic: "rg", end: "least", known: 2.43, unit: "in", on: "2010-06-30" }),
  row({ topic: "rg", end: "least", known: 2.46, unit: "in", on: "2010-07-01" }),
  row({ topic: "rg", end: "most", known: 2.8, unit: "in", on: NOW }),
  row({ topic: "differential", end: "most", known: 0.08, unit: "in", on: "2005-01-31" }),
  row({ topic: "differential", end: "most", known: 0.06, unit: "in", on: "2005-02-01" }),
  row({ topic: "intermediate", end: "most", known: 0, unit: "in over the total", on: NOW, provenance: "computed" }),
  row({ topic: "friction", end: "most", known: 0.32, unit: "1", on: NOW }),
  row({ topic: "hardness", end: "least", known: 72, unit: "D", on: "2020-12-31" }),
  row({ topic: "hardness", end: "least", known: 73, unit: "D", on: "2021-01-01" }),
  row({ topic: "hardnessMade", end: "least", known: 73, unit: "D", on: "2022-08-01" }),
  row({ topic: "hardnessSlow", end: "least", known: 78, unit: "D", on: "2025-12-31", ball: { oilAbsorptionMinutes: 91 } }),
  row({ topic: "meanRoughness", end: "most", known: 50, unit: "µin", on: "2009-04-01" }),
  row({ topic: "highestRoughness", end: "most", known: 65, unit: "µin", on: "2009-04-01" }),
  row({ topic: "oilAbsorption", end: "least", known: 2 + 15 / 60, unit: "min", on: "2020-08-01" }),
  row({ topic: "surface", end: "most", known: 0, unit: "parts", on: NOW }),
  row({ topic: "topBottomOz", end: "most", known: 3, unit: "oz", on: "2018-08-01" }),
  row({ topic: "sideOz", end: "most", known: 3, unit: "oz", on: "2018-08-01" }),
  row({ topic: "fingerThumbOz", end: "most", known: 3, unit: "oz", on: "2018-08-01" }),
  row({ topic: "topBottomOz", end: "most", known: 3, unit: "oz", on: "2020-07-31", ball: holed }),
  row({ topic: "sideOz", end: "most", known: 1, unit: "oz", on: "2020-07-31", ball: holed }),
  row({ topic: "fingerThumbOz", end: "least", known: -1, unit: "oz", on: "2020-07-31", ball: holed }),
  row({ topic: "topBottomOz", end: "most", known: 2, unit: "oz", on: NOW, provenance: "memory", ball: { massLb: 9 } }),
  row({ topic: "sideOz", end: "most", known: 0.75, unit: "oz", on: NOW, provenance: "memory", ball: { massLb: 9 } }),
  row({ topic: "topBottomOz", end: "most", known: 0.75, unit: "oz", on: NOW, provenance: "memory", ball: { massLb: 7 } }),
  row({ topic: "balanceHoles", end: "most", known: 0, unit: "holes", on: "2020-08-01" }),
  row({ topic: "gripHoles", end: "most", known: 5, unit: "holes", on: "2020-08-01" }),
  row({ topic: "unusedGripHoles", end: "most", known: 0, unit: "holes", on: "2020-08-01" }),
  ...([21, 25] as const).map(
    (known, i): Fact => ({
      topic: "rule book",
      says: i === 0 ? "hardness is tested from" : "hardness is tested up to",
      source: "USBC Equipment Specifications",
      provenance: "published",
      unit: "°C",
      known,
      within: 0,
      predict: () => HARDNESS_TEST_C[i],
    }),
  ),
  {
    topic: "rule book",
    says: "a sample at manufacture calls for eight more from",
    source: "USBC Equipment Specifications",
    provenance: "published",
    unit: "µin",
    known: 42,
    within: 0,
    predict: () => EIGHT_MORE_FROM_MICROINCH,
  },
  ...(["least", "most"] as const).map(
    (end): Fact => ({
      topic: "rule book",
      says: `the ${end} circumference allowed is π times the ${end} diameter`,
      source: "the two limits agree by π",
      provenance: "computed",
      unit: "in",
      known: Math.PI * (end === "least" ? 8.5 : 8.595),
      within: 0.001,
      predict: () => limitsOf(BALL, "usbc", NOW).find(({ topic }) => topic === "circumference")?.[end] ?? Number.NaN,
    }),
  ),
];
