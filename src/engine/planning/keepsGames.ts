import type { Assumed } from "../assumptions.ts";
import type { CoverId } from "../ball/ball.ts";
import { fadeLaws, gamesWithin, overLaws, type WeightedLaw } from "../surface/fade.ts";
import type { Comparison } from "./comparison.ts";
import type { Interval } from "./plan.ts";

/** Half a step of the ladder, which is a factor of about 1.5: so far a surface may go beyond the plateau's ends. */
const HALF_STEP = 1.25;
/** Nobody counts further. */
const MOST_GAMES = 200;

/** For how many games a finish of the plateau stays on it, by the cover's fade; null for one that is not on it. */
export function keepsGames(comparison: Comparison, index: number, laws: readonly WeightedLaw[]): Interval | null {
  const { standings, plateau } = comparison;
  if (index < plateau[0] || index > plateau[1]) return null;
  const most = standings[plateau[0]].rating.effectiveRaUm * HALF_STEP;
  const least = standings[plateau[1]].rating.effectiveRaUm / HALF_STEP;
  const start = standings[index].rating.effectiveRaUm;
  return overLaws(laws, (law) => Math.min(MOST_GAMES, gamesWithin(law, start, least, most) ?? MOST_GAMES));
}

/** The fade of a cover by its assumptions alone: the law does not depend on where it starts. */
export function fadeOf(cover: CoverId | null, a: Assumed): readonly WeightedLaw[] {
  return fadeLaws(cover, 1, [], a);
}
