import type { Assumed, AssumptionId } from "../../assumptions.ts";
import type { Bowler, DeliveryKnown } from "../../delivery/bowler.ts";
import { NIGHT_IDS, type NightId, nightValue } from "../../worlds/parameters.ts";
import { normalShare } from "../normal.ts";

/**
 * What is told of a house once its shots were seen. The first, third and fourth are the house's own (in every world what they were is looked for anew); the
 * others are constants of a world: the shots say in which of the worlds they were thrown.
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

/** How well the bowler's numbers are known: standard deviations of the mean delivery, > 0. */
export type MeanKnown = Pick<DeliveryKnown, DeliveryId>;

/** A house and a hand in one world: the house's own numbers, then the delivery, each on a scale on which its prior is standard normal. */
export type Place = readonly number[];
export const PLACE_SIZE = NIGHT_IDS.length + DELIVERY_IDS.length;
/** Nothing known but the priors: the middle of each. */
export const MIDDLE: Place = Array.from({ length: PLACE_SIZE }, () => 0);

/** The house's own numbers at a place. */
export function laneAt(place: Place): Readonly<Record<NightId, number>> {
  return Object.fromEntries(NIGHT_IDS.map((id, i) => [id, nightValue(id, normalShare(place[i]))])) as Record<NightId, number>;
}

/** The mean delivery at a place. */
export function deliveryAt(place: Place, bowler: Bowler, known: MeanKnown): Readonly<Record<DeliveryId, number>> {
  const values = Object.fromEntries(DELIVERY_IDS.map((id, i) => [id, bowler[id] + place[NIGHT_IDS.length + i] * known[id]])) as Record<
    DeliveryId,
    number
  >;
  return { ...values, speedMph: Math.max(SLOWEST_MPH, values.speedMph), revRateRpm: Math.max(0, values.revRateRpm) };
}

const SLOWEST_MPH = 3;

/** Every parameter that is told, in one world at one place. */
export function valuesAt(place: Place, world: Assumed, bowler: Bowler, known: MeanKnown): Readonly<Record<ParameterId, number>> {
  const lane: Partial<Assumed> = laneAt(place);
  const house = Object.fromEntries(HOUSE_IDS.map((id) => [id, lane[id] ?? world[id]])) as Record<HouseId, number>;
  return { ...house, ...deliveryAt(place, bowler, known) };
}
