import { type Assumed, assume } from "../assumptions.ts";
import { type CoverId, careRules } from "../ball/ball.ts";
import { type FadeReading, fadeLaw, fadeLaws, gamesWithin, overLaws, raAfter, type WeightedLaw } from "./fade.ts";
import type { RoughnessRange } from "./history.ts";

/** What is known of a ball's use since its finish was put on. */
export interface Use {
  /** Null where nobody knows it. */
  readonly cover: CoverId | null;
  /** The finish as put on, µm effective. */
  readonly startUm: number;
  readonly gamesSince: number;
  readonly gamesSinceExtraction: number;
  readonly gamesSinceResurfacing: number;
  /** How hard the house's lanes are on a surface; 1 is usual. */
  readonly abrasiveness: number;
  readonly readings: readonly FadeReading[];
}

/** Games until something is due; 0 is due now, null never. */
export interface Due {
  readonly value: number | null;
  readonly low: number | null;
  readonly high: number | null;
}

export interface Care {
  readonly track: readonly FadePoint[];
  readonly offTrack: readonly FadePoint[];
  readonly now: RoughnessRange;
  readonly refresh: Due;
  readonly extraction: Due;
  readonly resurfacing: Due;
}

export interface FadePoint extends RoughnessRange {
  readonly games: number;
}

/** A step on the ladder is about a factor of 1.5 in roughness: when the track has gone so far, the finish is no longer the one that was chosen. */
const ANOTHER_FINISH = 1.5;
/** Common practice: a reactive ball is dull in both senses after 40 to 50 games without extraction; published, second-hand: resurface at 60–80. */
const EXTRACT_AT = { low: 40, value: 45, high: 50 } as const;
const RESURFACE_AT = { low: 60, value: 70, high: 80 } as const;
const DRAWN_TO_GAMES = 100;
const DRAWN_EVERY = 5;

/** How the surface fades, moved by the ball's own readings, and what is due when. */
export function careOf(use: Use, a: Assumed = assume()): Care {
  const laws = fadeLaws(use.cover, use.startUm, use.readings, a, use.abrasiveness);
  const curve = (where: "track" | "offTrack") =>
    Array.from({ length: DRAWN_TO_GAMES / DRAWN_EVERY + 1 }, (_, i): FadePoint => {
      const games = i * DRAWN_EVERY;
      return { games, ...overLaws(laws, (law) => raAfter(law, use.startUm, games, where)) };
    });
  const { reactive } = careRules(use.cover);
  return {
    track: curve("track"),
    offTrack: curve("offTrack"),
    now: overLaws(laws, (law) => raAfter(law, use.startUm, use.gamesSince)),
    refresh: refreshDue(laws, use),
    extraction: reactive ? dueAt(EXTRACT_AT, use.gamesSinceExtraction) : NEVER,
    resurfacing: reactive ? dueAt(RESURFACE_AT, use.gamesSinceResurfacing) : NEVER,
  };
}

/** Games until the track of a fresh finish has gone a step of the ladder, by the cover's usual law and without readings: for looking over many balls at once. Null for never. */
export function usualRefreshGames(cover: CoverId | null, startUm: number, a: Assumed = assume()): number | null {
  return gamesWithin(fadeLaw(cover, a), startUm, startUm / ANOTHER_FINISH, startUm * ANOTHER_FINISH);
}

const NEVER: Due = { value: null, low: null, high: null };

/** Games until the track has gone a step of the ladder; those laws that never let it go so far count as never. */
function refreshDue(laws: readonly WeightedLaw[], use: Use): Due {
  const never = Number.MAX_SAFE_INTEGER;
  const range = overLaws(laws, (law) => gamesWithin(law, use.startUm, use.startUm / ANOTHER_FINISH, use.startUm * ANOTHER_FINISH) ?? never);
  const left = (games: number) => (games === never ? null : Math.max(0, games - use.gamesSince));
  return { value: left(range.value), low: left(range.low), high: left(range.high) };
}

function dueAt(at: { readonly low: number; readonly value: number; readonly high: number }, games: number): Due {
  const left = (total: number) => Math.max(0, total - games);
  return { value: left(at.value), low: left(at.low), high: left(at.high) };
}
