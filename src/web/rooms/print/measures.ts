import type { Reading } from "#contract/records/reading";
import { PLACES } from "#engine/surface/readings/places";

/** What was read at one place, before and after the work. */
export interface PlaceRead {
  readonly place: string;
  readonly before: readonly Reading[];
  readonly after: readonly Reading[];
}

const ORDER: readonly string[] = PLACES;

/** A ticket's readings of the surface by place: the sides in their order, the track and beside it, then whatever else was written down. */
export function readByPlace(readings: readonly Reading[]): readonly PlaceRead[] {
  const surface = readings.filter(({ raUm, comparison }) => raUm !== null || comparison !== null);
  const rank = (place: string) => (ORDER.includes(place) ? ORDER.indexOf(place) : ORDER.length);
  return [...new Set(surface.map(({ place }) => place))]
    .toSorted((a, b) => rank(a) - rank(b) || a.localeCompare(b))
    .map((place) => ({ place, before: at(surface, place, "before"), after: at(surface, place, "after") }));
}

function at(readings: readonly Reading[], place: string, when: Reading["when"]): readonly Reading[] {
  return readings.filter((one) => one.place === place && one.when === when);
}

/** Ra of some readings, µm; those by eye have none. */
export function raOf(readings: readonly Reading[]): readonly number[] {
  return readings.flatMap(({ raUm }) => (raUm === null ? [] : [raUm]));
}
