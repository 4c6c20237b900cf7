import type { Reading } from "#contract/records/reading";
import { MEASURE } from "#words/en/rooms/measure";
import { useRoughness } from "./zone.ts";

/** What a reading says: a roughness in the shop's unit, or how the side looked beside the reference. */
export function useReadingText(): (reading: Pick<Reading, "raUm" | "comparison">) => string {
  const roughness = useRoughness();
  return ({ raUm, comparison }) => {
    if (raUm !== null) return roughness(raUm);
    return comparison === null ? "" : MEASURE.comparisons[comparison];
  };
}
