import { CALIBRATED } from "./calibrated.ts";

/** Where a number comes from. `calibrated` and `chosen` are ours; no mark makes an assumption a measurement. */
export type Mark = "calibrated" | "chosen" | "published" | "memory" | "common practice";

export interface Assumption {
  readonly value: number;
  /** Ends of the range in which the value is believed to lie; draws are uniform between them. */
  readonly low: number;
  readonly high: number;
  readonly unit: string;
  readonly mark: Mark;
  readonly source: string;
}

const TRADE = "calibrated to the trade's qualitative behaviour, see docs/model/calibration.md";
const CHOSEN = "chosen, not measured; range from what changes a path by less than the trade would notice";

/** A constant that the calibration moves; its range is the one the calibration was held to. */
function calibrated(id: keyof typeof CALIBRATED, unit: string): Assumption {
  const { value, low, high } = CALIBRATED[id];
  return { value, low, high, unit, mark: "calibrated", source: TRADE };
}

/**
 * Every number that the model assumes, with its range. Add one here and nowhere else; the model's page names it.
 */
export const ASSUMPTIONS = {
  "friction.dry.polyester": calibrated("friction.dry.polyester", "1"),
  "friction.dry.urethane": calibrated("friction.dry.urethane", "1"),
  "friction.dry.solid": calibrated("friction.dry.solid", "1"),
  "friction.dry.hybrid": calibrated("friction.dry.hybrid", "1"),
  "friction.dry.pearl": calibrated("friction.dry.pearl", "1"),
  "friction.oil": calibrated("friction.oil", "1"),
  "friction.filmRatio": calibrated("friction.filmRatio", "1"),
  "friction.exponent": { value: 2, low: 1.7, high: 2.3, unit: "1", mark: "chosen", source: CHOSEN },
  "friction.laneRoughness": { value: 0.25, low: 0.18, high: 0.35, unit: "µm", mark: "chosen", source: CHOSEN },
  "filmReach.polyester": calibrated("filmReach.polyester", "1"),
  "filmReach.urethane": calibrated("filmReach.urethane", "1"),
  "filmReach.solid": calibrated("filmReach.solid", "1"),
  "filmReach.hybrid": calibrated("filmReach.hybrid", "1"),
  "filmReach.pearl": calibrated("filmReach.pearl", "1"),
  "carriedOil.share": calibrated("carriedOil.share", "1"),
  "carriedOil.reach": { value: 3.5, low: 2.5, high: 5, unit: "ft", mark: "chosen", source: CHOSEN },
  "carriedOil.polyester": { value: 2.0, low: 1.6, high: 2.4, unit: "1", mark: "chosen", source: CHOSEN },
  "carriedOil.urethane": { value: 1.4, low: 1.1, high: 1.7, unit: "1", mark: "chosen", source: CHOSEN },
  "carriedOil.solid": { value: 0.9, low: 0.75, high: 1.05, unit: "1", mark: "chosen", source: CHOSEN },
  "carriedOil.hybrid": { value: 1.0, low: 0.85, high: 1.15, unit: "1", mark: "chosen", source: CHOSEN },
  "carriedOil.pearl": { value: 1.1, low: 0.9, high: 1.3, unit: "1", mark: "chosen", source: CHOSEN },
  "roll.resistance": { value: 0.003, low: 0.001, high: 0.006, unit: "1", mark: "chosen", source: CHOSEN },
  "roughness.scale": {
    value: 1,
    low: 0.8,
    high: 1.2,
    unit: "1",
    mark: "chosen",
    source: "spread of pads, pressure and hands between shops; chosen",
  },
  "roughness.readingFactor": {
    value: 1.45,
    low: 1.33,
    high: 1.61,
    unit: "1",
    mark: "memory",
    source: "effective over read roughness: ratio of the calibrated table to fresh-pad readings remembered in the trade",
  },
  "roughness.polishKeeps": {
    value: 0.35,
    low: 0.25,
    high: 0.45,
    unit: "1",
    mark: "chosen",
    source: "share of the base's roughness that is felt through polish; chosen so that 4000 + polish is 0.12 µm",
  },
  "roughness.polishFloor": {
    value: 0.092,
    low: 0.07,
    high: 0.12,
    unit: "µm",
    mark: "memory",
    source: "polished balls read 2–5 µin, from memory, times the reading factor",
  },
  "film.unit": {
    value: 0.09,
    low: 0.08,
    high: 0.18,
    unit: "µm",
    mark: "memory",
    source: "0.0167 mL/ft² is 0.180 µm (memory); published volumes fit about 0.09 µm",
  },
  "film.scale": {
    value: 1,
    low: 0.85,
    high: 1.15,
    unit: "1",
    mark: "chosen",
    source: "oil laid against oil stated: temperature, machine, lane",
  },
  "wear.removal": {
    value: 0.06,
    low: 0.03,
    high: 0.08,
    unit: "1",
    mark: "chosen",
    source: "share of the film taken in the middle of a track; held under the pick-up ceiling of 0.088 mL a shot",
  },
  "wear.footprint": {
    value: 0.55,
    low: 0.4,
    high: 0.8,
    unit: "board",
    mark: "chosen",
    source: "standard deviation of the track's width, contact diameter 2.8–4.4 mm plus flare",
  },
  "wear.laidDown.polyester": { value: 0.7, low: 0.5, high: 0.85, unit: "1", mark: "chosen", source: CHOSEN },
  "wear.laidDown.urethane": { value: 0.5, low: 0.3, high: 0.7, unit: "1", mark: "chosen", source: CHOSEN },
  "wear.laidDown.reactive": { value: 0.06, low: 0.02, high: 0.15, unit: "1", mark: "chosen", source: CHOSEN },
  "wear.laidDownReach": { value: 6, low: 4, high: 8, unit: "ft", mark: "chosen", source: CHOSEN },
  "pocket.straightWidth": {
    value: 0.9,
    low: 0.7,
    high: 1,
    unit: "board",
    mark: "published",
    source: "USBC: above 90 % in 'less than one board' for a straight ball, second-hand",
  },
  "pocket.steepWidth": {
    value: 1.5,
    low: 1.3,
    high: 1.7,
    unit: "board",
    mark: "published",
    source: "USBC: above 90 % on boards 17.0–18.5 at 6°, second-hand",
  },
  "pocket.middle": {
    value: 17.6,
    low: 17.4,
    high: 17.75,
    unit: "board",
    mark: "published",
    source: "USBC: best at 17.5; the 90 % zone at 6° has its middle at 17.75",
  },
} as const satisfies Record<string, Assumption>;

export type AssumptionId = keyof typeof ASSUMPTIONS;
export type Assumed = Readonly<Record<AssumptionId, number>>;

export const ASSUMPTION_IDS = Object.keys(ASSUMPTIONS) as readonly AssumptionId[];

/** The registry's own values, with some of them set otherwise. */
export function assume(instead: Partial<Assumed> = {}): Assumed {
  const values = {} as Record<AssumptionId, number>;
  for (const id of ASSUMPTION_IDS) values[id] = instead[id] ?? ASSUMPTIONS[id].value;
  return values;
}

/**
 * One draw of the assumptions: each uniform in its range, moved with the centre when the question sets it otherwise.
 *
 * @param unit one number in [0, 1) for each assumption, in the registry's order.
 */
export function drawAssumed(centre: Assumed, unit: ArrayLike<number>, offset: number): Assumed {
  const values = {} as Record<AssumptionId, number>;
  ASSUMPTION_IDS.forEach((id, i) => {
    const { value, low, high } = ASSUMPTIONS[id];
    const moved = centre[id] / value;
    values[id] = (low + (high - low) * unit[offset + i]) * moved;
  });
  return values;
}
