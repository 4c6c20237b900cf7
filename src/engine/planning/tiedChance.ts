import type { FinishPlan, Interval } from "./plan.ts";

/** What is printed for a finish that is one of several too close to call: the chance of the best of them; null for one that is not. */
export function tiedChance({ candidates, pick }: FinishPlan, finish: string): Interval | null {
  if (pick === null || pick.plateau.length < 2 || !pick.plateau.includes(finish)) return null;
  const tied = candidates.flatMap(({ finish: name, chance }) => (chance !== null && pick.plateau.includes(name) ? [chance] : []));
  return tied.length === 0 ? null : tied.reduce((best, one) => (one.value > best.value ? one : best));
}
