import { ASSUMPTIONS, type Assumed, type AssumptionId } from "../../assumptions.ts";
import type { Bowler, DeliveryKnown } from "../../delivery/bowler.ts";
import { normalDeviate } from "../../random.ts";

/**
 * What is learned of a house, and of the bowler along the way. Film over roughness at half contact (`friction.filmRatio`) is held: shots show only the ratio
 * of film to it. Priors of the house are even over its ranges; those of the delivery are normal about the numbers given.
 */
export const HOUSE_IDS = [
  "house.dry",
  "friction.oil",
  "film.scale",
  "house.frontOil",
  "carriedOil.share",
  "friction.laneRoughness",
] as const satisfies readonly AssumptionId[];
export type HouseId = (typeof HOUSE_IDS)[number];

export const DELIVERY_IDS = ["speedMph", "revRateRpm", "axisRotationDeg"] as const;
export type DeliveryId = (typeof DELIVERY_IDS)[number];

export type ParameterId = HouseId | DeliveryId;
export const PARAMETER_IDS: readonly ParameterId[] = [...HOUSE_IDS, ...DELIVERY_IDS];

/** By how much one house may differ from the next in what worlds know least, a share to either side: most of the spread over the worlds is no house's. Chosen. */
const HOUSE_SHARES: Readonly<Partial<Record<HouseId, number>>> = { "friction.oil": 0.15, "carriedOil.share": 0.2 };

/** Where a parameter of a house is believed to lie before any shot is seen. */
export function houseRange(id: HouseId): { readonly value: number; readonly low: number; readonly high: number } {
  const { value, low, high } = ASSUMPTIONS[id];
  const share = HOUSE_SHARES[id];
  return share === undefined ? { value, low, high } : { value, low: value * (1 - share), high: value * (1 + share) };
}

/** How well the bowler's numbers are known: standard deviations of the mean delivery, > 0. */
export type MeanKnown = Pick<DeliveryKnown, DeliveryId>;

/** Where parameters live: each on its own scale, in which its prior is even over −1 … 1 (house) or standard normal (delivery). */
export type Place = readonly number[];

/** The values that a place stands for. */
export function valuesAt(place: Place, bowler: Bowler, known: MeanKnown): Readonly<Record<ParameterId, number>> {
  const values = {} as Record<ParameterId, number>;
  HOUSE_IDS.forEach((id, i) => {
    const { low, high } = houseRange(id);
    values[id] = (low + high) / 2 + (place[i] * (high - low)) / 2;
  });
  DELIVERY_IDS.forEach((id, i) => {
    values[id] = bowler[id] + place[HOUSE_IDS.length + i] * known[id];
  });
  return values;
}

/** The usual values as a place: the registry's, and the numbers given. */
export function usualPlace(): Place {
  return [
    ...HOUSE_IDS.map((id) => {
      const { value, low, high } = houseRange(id);
      return (2 * value - low - high) / (high - low);
    }),
    ...DELIVERY_IDS.map(() => 0),
  ];
}

export function assumedAt(values: Readonly<Record<ParameterId, number>>, centre: Assumed): Assumed {
  return { ...centre, ...Object.fromEntries(HOUSE_IDS.map((id) => [id, values[id]])) };
}

export function bowlerAt(values: Readonly<Record<ParameterId, number>>, bowler: Bowler): Bowler {
  return {
    ...bowler,
    speedMph: Math.max(3, values.speedMph),
    revRateRpm: Math.max(0, values.revRateRpm),
    axisRotationDeg: values.axisRotationDeg,
  };
}

/** Logarithm of the prior's density, but for a constant; −∞ outside the ranges. */
export function logPrior(place: Place): number {
  let sum = 0;
  for (let i = 0; i < place.length; i++) {
    if (i < HOUSE_IDS.length) {
      if (Math.abs(place[i]) > 1) return Number.NEGATIVE_INFINITY;
    } else sum -= 0.5 * place[i] ** 2;
  }
  return sum;
}

/** A place drawn from the prior. @param unit one number in (0, 1) for each parameter */
export function priorPlace(unit: ArrayLike<number>, offset = 0): Place {
  return PARAMETER_IDS.map((_, i) => (i < HOUSE_IDS.length ? 2 * unit[offset + i] - 1 : normalDeviate(unit[offset + i])));
}
