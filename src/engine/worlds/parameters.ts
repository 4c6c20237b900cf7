import type { Assumed, AssumptionId } from "../assumptions.ts";
import type { DeliveryKnown } from "../delivery/bowler.ts";
import { normalDeviate } from "../random.ts";

/** What is believed of one assumption before anything is fitted: even between its ends, on a straight or on a logarithmic scale. */
export interface Prior {
  readonly low: number;
  readonly high: number;
  readonly scale: "linear" | "log";
  /** The ends are given as shares of this assumption's value in the same world. */
  readonly of?: AssumptionId;
}

const linear = (low: number, high: number): Prior => ({ low, high, scale: "linear" });
const log = (low: number, high: number): Prior => ({ low, high, scale: "log" });
const share = (of: AssumptionId, low: number, high: number): Prior => ({ low, high, scale: "linear", of });

/**
 * Everything of which nobody knows a number for certain and on which a finish plan rests: one world is one value for each. What an assumption is, its unit
 * and where its number comes from stands in `assumptions.ts`; here stands how wide it is believed before the fit, deliberately wide, all *chosen* but for the
 * dry friction of reactive resin (published, second-hand) and the level of roughness (from memory). Whoever is named `of` another comes after it.
 */
export const PRIORS = {
  "friction.dry.hybrid": linear(0.12, 0.27),
  "friction.dry.solid": share("friction.dry.hybrid", 0.97, 1.06),
  "friction.dry.pearl": share("friction.dry.hybrid", 0.93, 1.03),
  "friction.dry.urethane": linear(0.08, 0.2),
  "friction.dry.polyester": log(0.06, 0.13),
  "friction.dryWithRoughness": linear(-0.06, 0.06),
  "friction.oil": log(0.005, 0.03),
  "friction.filmRatio": log(0.3, 1.5),
  "friction.exponent": log(1.2, 5),
  "friction.laneRoughness": log(0.12, 0.5),
  "filmReach.solid": linear(1, 1.5),
  "filmReach.pearl": linear(0.65, 1.05),
  "filmReach.urethane": linear(0.8, 1.6),
  "filmReach.polyester": linear(0.4, 0.9),
  "carriedOil.share": linear(0.2, 1.4),
  "carriedOil.reach": linear(1.5, 8),
  "carriedOil.urethane": linear(1.1, 1.7),
  "carriedOil.solid": linear(0.75, 1.05),
  "carriedOil.pearl": linear(0.9, 1.3),
  "carriedOil.polyester": linear(1.6, 2.4),
  "roll.resistance": linear(0.001, 0.006),
  "roughness.scale": log(0.7, 1.4),
  "roughness.spread": linear(0.8, 1.2),
  "roughness.polishKeeps": linear(0.2, 0.6),
  "roughness.polishFloor": linear(0.06, 0.14),
  "wear.removal": log(0.025, 0.09),
  "wear.footprint": linear(0.4, 0.8),
  "wear.laidDown.reactive": linear(0.02, 0.15),
  "wear.laidDown.urethane": linear(0.3, 0.7),
  "wear.laidDown.polyester": linear(0.5, 0.85),
  "wear.laidDownReach": linear(4, 8),
  "carry.level": linear(0.02, 0.98),
  "carry.shape": linear(0.02, 0.98),
} as const satisfies Partial<Record<AssumptionId, Prior>>;

export type ParameterId = keyof typeof PRIORS;
export const PARAMETER_IDS = Object.keys(PRIORS) as readonly ParameterId[];

/** What differs from one house and night to the next; drawn anew for every plan, never calibrated. All chosen. */
export const NIGHT = {
  "house.dry": linear(0.85, 1.15),
  "house.frontOil": log(0.8, 1.25),
  "film.scale": log(0.85, 1.18),
} as const satisfies Partial<Record<AssumptionId, Prior>>;

/** By how much a delivery that was measured may be wrong, standard deviations; drawn anew for every plan. Chosen. */
export const MEASURED_DELIVERY: DeliveryKnown = { speedMph: 0.3, revRateRpm: 15, axisRotationDeg: 3, axisTiltDeg: 2 };

type DeliveryError = keyof DeliveryKnown;
export type NightId = keyof typeof NIGHT;
export const NIGHT_IDS = Object.keys(NIGHT) as readonly NightId[];
const DELIVERY_IDS = Object.keys(MEASURED_DELIVERY) as readonly DeliveryError[];
/** How many numbers a night takes. */
export const NIGHT_SIZE = NIGHT_IDS.length + DELIVERY_IDS.length;

/** The value of a prior at a share of the way, 0–1, in a world whose other values are given. */
export function valueAt(prior: Prior, unit: number, others: Readonly<Partial<Assumed>>): number {
  const { low, high } = prior;
  const value = prior.scale === "log" ? low * (high / low) ** unit : low + (high - low) * unit;
  return prior.of === undefined ? value : value * (others[prior.of] ?? 1);
}

/** The assumptions of the world that stands at a place of the unit cube, one number in [0, 1] for each parameter. */
export function worldAt(unit: ArrayLike<number>): Partial<Assumed> {
  const values: Partial<Record<AssumptionId, number>> = {};
  PARAMETER_IDS.forEach((id, i) => {
    values[id] = valueAt(PRIORS[id], unit[i], values);
  });
  return values;
}

/** One night in one house: its lane and oil against what is stated, and by how many standard deviations the delivery differs from what is known of it. */
export interface Night {
  readonly lane: Partial<Assumed>;
  readonly delivery: Readonly<Record<DeliveryError, number>>;
  /** The delivery itself, where shots have told of it. */
  readonly thrown?: Pick<DeliveryKnown, "speedMph" | "revRateRpm" | "axisRotationDeg">;
}

/** One number of a night at a share of the way, 0–1, between its ends. */
export function nightValue(id: NightId, unit: number): number {
  return valueAt(NIGHT[id], unit, {});
}

/** @param unit {@link NIGHT_SIZE} numbers in [0, 1), from `offset` on */
export function nightAt(unit: ArrayLike<number>, offset: number): Night {
  const lane: Partial<Record<AssumptionId, number>> = {};
  NIGHT_IDS.forEach((id, i) => {
    lane[id] = nightValue(id, unit[offset + i]);
  });
  const delivery = Object.fromEntries(DELIVERY_IDS.map((id, i) => [id, normalDeviate(unit[offset + NIGHT_IDS.length + i])])) as Record<
    DeliveryError,
    number
  >;
  return { lane, delivery };
}
