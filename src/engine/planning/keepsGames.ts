import type { Assumed } from "../assumptions.ts";
import type { CoverId } from "../ball/ball.ts";
import { type FadeLaw, fadeLaws, gamesWithin, overLaws, type WeightedLaw } from "../surface/fade.ts";
import type { Interval } from "./plan.ts";

/** Half a step of the ladder, which is a factor of about 1.5: beyond it the ball is another one. */
const HALF_STEP = 1.25;
/** Nobody counts further: a law under which the surface stays counts so many. */
const MOST_GAMES = 200;

/** For how many games a surface stays within half a step of what was put on, by the cover's fade; null for one that more likely than not always does. */
export function keepsGames(startUm: number, laws: readonly WeightedLaw[]): Interval | null {
  const games = (law: FadeLaw) => gamesWithin(law, startUm, startUm / HALF_STEP, startUm * HALF_STEP) ?? MOST_GAMES;
  const kept = overLaws(laws, (law) => Math.min(MOST_GAMES, games(law)));
  return kept.value < MOST_GAMES ? kept : null;
}

/** The fade of a cover by its assumptions alone: the law does not depend on where it starts. */
export function fadeOf(cover: CoverId | null, a: Assumed): readonly WeightedLaw[] {
  return fadeLaws(cover, 1, [], a);
}
