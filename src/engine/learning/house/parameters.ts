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

/** How well the bowler's numbers are known: standard deviations of the mean delivery, > 0. */
export type MeanKnown = Pick<DeliveryKnown, DeliveryId>;

/** A bowler whose shots were seen, with the numbers given. */
export interface Hand {
  readonly bowler: Bowler;
  readonly known: MeanKnown;
}

/** A house and its bowlers' hands in one world: the house's own numbers, then each delivery, all on a scale on which the prior is standard normal. */
export type Place = readonly number[];
export const HOUSE_SIZE = NIGHT_IDS.length;
export const HAND_SIZE = DELIVERY_IDS.length;

/** How many numbers a place has for so many hands. */
export function placeSize(hands: number): number {
  return HOUSE_SIZE + hands * HAND_SIZE;
}

/** Nothing known but the priors: the middle of each. */
export function middlePlace(hands: number): Place {
  return new Array<number>(placeSize(hands)).fill(0);
}

/** The house's own numbers at a place. */
export function laneAt(place: Place): Readonly<Record<NightId, number>> {
  return Object.fromEntries(NIGHT_IDS.map((id, i) => [id, nightValue(id, normalShare(place[i]))])) as Record<NightId, number>;
}

/** The mean delivery of one of the hands at a place. */
export function deliveryAt(place: Place, hands: readonly Hand[], of: number): Readonly<Record<DeliveryId, number>> {
  const { bowler, known } = hands[of];
  const at = HOUSE_SIZE + of * HAND_SIZE;
  const values = Object.fromEntries(DELIVERY_IDS.map((id, i) => [id, bowler[id] + place[at + i] * known[id]])) as Record<
    DeliveryId,
    number
  >;
  return { ...values, speedMph: Math.max(SLOWEST_MPH, values.speedMph), revRateRpm: Math.max(0, values.revRateRpm) };
}

const SLOWEST_MPH = 3;

/** A parameter that is told: of the house, or of one of the hands. */
export interface Parameter {
  readonly id: ParameterId;
  /** Which hand; null: the house's. */
  readonly hand: number | null;
}

/** Every parameter that is told: the house's, then each hand's. */
export function parametersOf(hands: readonly Hand[]): readonly Parameter[] {
  return [...HOUSE_IDS.map((id) => ({ id, hand: null })), ...hands.flatMap((_, hand) => DELIVERY_IDS.map((id) => ({ id, hand })))];
}

/** Their values in one world at one place, in the same order. */
export function valuesAt(place: Place, world: Assumed, hands: readonly Hand[]): readonly number[] {
  const lane: Partial<Assumed> = laneAt(place);
  const house = HOUSE_IDS.map((id) => lane[id] ?? world[id]);
  const deliveries = hands.flatMap((_, hand) => {
    const delivery = deliveryAt(place, hands, hand);
    return DELIVERY_IDS.map((id) => delivery[id]);
  });
  return [...house, ...deliveries];
}
