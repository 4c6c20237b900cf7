import type { PlanDocument } from "#contract/planDocument";
import { filmOfPattern } from "#engine/lane/film";
import { toFilmSheet } from "#engine/lane/filmMap";
import type { PatternSource } from "#engine/lane/lane";

/** What a fresh pattern amounts to, computed from it whatever form it came in, beside what its sheet states. */
export function oilOf(pattern: PatternSource): PlanDocument["oil"] {
  const { lengthFt, volumeMl, meanUm, ratio } = toFilmSheet(filmOfPattern(pattern));
  const stated = pattern.kind === "oilSheet" ? { ...pattern.sheet.stated } : { totalMl: null, ratio: null };
  // The engine writes 0 where the outside is dry and there is nothing to divide by.
  return { lengthFt, volumeMl, meanUm, ratio: ratio > 0 ? ratio : null, stated };
}
