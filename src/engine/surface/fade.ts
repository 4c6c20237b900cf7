import { ASSUMPTIONS, type Assumed } from "../assumptions.ts";
import { COVER_IDS, type CoverId, coverOf } from "../ball/ball.ts";
import type { CoverLaws } from "../ball/covers.ts";

/**
 * How a surface changes with games: it relaxes towards the level that the lanes keep it at, sanded ones from above ("lane shine"), polished ones from
 * below (they roughen). Ra(g) = L + (Ra₀ − L) e^(−g/τ) in the track, slower beside it. See docs/model/fade.md.
 */
export interface FadeLaw {
  /** The lanes' own level, µm effective. */
  readonly levelUm: number;
  /** Games in which 63 % of the way is gone. */
  readonly games: number;
  readonly offTrack: number;
}

/** A reading after some games, µm effective. */
export interface FadeReading {
  readonly games: number;
  readonly raUm: number;
  readonly where: "track" | "offTrack";
}

type Fade = Pick<CoverLaws, "fadeLevel" | "fadeGames">;

/** Fades that covers have, each once. */
const FADES: readonly Fade[] = COVER_IDS.map((id): Fade => coverOf(id).laws).filter(
  (fade, i, all) => all.findIndex(({ fadeLevel, fadeGames }) => fadeLevel === fade.fadeLevel && fadeGames === fade.fadeGames) === i,
);

/** A cover that nobody knows fades as the quickest of them: what is due comes rather too soon than too late. */
function fadeOf(cover: CoverId | null, a: Assumed): Fade {
  return cover === null
    ? FADES.reduce((quickest, fade) => (a[fade.fadeGames] < a[quickest.fadeGames] ? fade : quickest))
    : coverOf(cover).laws;
}

/** @param abrasiveness how hard the house's lanes are on a surface; 1 is usual, 2 twice as fast. */
export function fadeLaw(cover: CoverId | null, a: Assumed, abrasiveness = 1): FadeLaw {
  const { fadeLevel, fadeGames } = fadeOf(cover, a);
  return { levelUm: a[fadeLevel], games: a[fadeGames] / abrasiveness, offTrack: a["fade.offTrack"] };
}

export function raAfter(law: FadeLaw, startUm: number, games: number, where: "track" | "offTrack" = "track"): number {
  const slower = where === "track" ? 1 : law.offTrack;
  return law.levelUm + (startUm - law.levelUm) * Math.exp(-games / (law.games * slower));
}

/** Games until the track leaves [low, high] µm; null where it never does. */
export function gamesWithin(law: FadeLaw, startUm: number, lowUm: number, highUm: number): number | null {
  if (startUm < lowUm || startUm > highUm) return 0;
  const bound = startUm > law.levelUm ? lowUm : highUm;
  const left = (bound - law.levelUm) / (startUm - law.levelUm);
  return left <= 0 || left >= 1 || !Number.isFinite(left) ? (left >= 1 ? 0 : null) : -law.games * Math.log(left);
}

/** One possible law with its weight; weights sum to one. */
export interface WeightedLaw {
  readonly law: FadeLaw;
  readonly weight: number;
}

const GRID = 15;
/** A reading's own scatter, in the logarithm: place on the ball, tester, hand. */
const READING_SCATTER = 0.15;

/**
 * What the laws of a ball may be, given its readings: a grid over the ranges of level and games (even in the logarithm, as the assumptions' ranges say), weighted by
 * how well each explains the readings. Without readings the weights are even; of a cover that nobody knows it may be the law of any. Bayes' rule on a grid: exact up to its spacing.
 */
export function fadeLaws(
  cover: CoverId | null,
  startUm: number,
  readings: readonly FadeReading[],
  a: Assumed,
  abrasiveness = 1,
): readonly WeightedLaw[] {
  const laws = (cover === null ? FADES : [coverOf(cover).laws]).flatMap((fade) => lawsOf(fade, a, abrasiveness));
  const logs = laws.map((law) =>
    readings.reduce(
      (sum, reading) => sum - 0.5 * (Math.log(reading.raUm / raAfter(law, startUm, reading.games, reading.where)) / READING_SCATTER) ** 2,
      0,
    ),
  );
  const top = Math.max(...logs);
  const weights = logs.map((log) => Math.exp(log - top));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  return laws.map((law, i) => ({ law, weight: weights[i] / total }));
}

function lawsOf({ fadeLevel, fadeGames }: Fade, a: Assumed, abrasiveness: number): readonly FadeLaw[] {
  const levels = spread(ASSUMPTIONS[fadeLevel]);
  const games = spread(ASSUMPTIONS[fadeGames]);
  return levels.flatMap((levelUm) => games.map((g) => ({ levelUm, games: g / abrasiveness, offTrack: a["fade.offTrack"] })));
}

function spread({ low, high }: { readonly low: number; readonly high: number }): readonly number[] {
  return Array.from({ length: GRID }, (_, i) => low * (high / low) ** ((i + 0.5) / GRID));
}

/** Mean and 5–95 % of a figure over the possible laws. */
export function overLaws(
  laws: readonly WeightedLaw[],
  figure: (law: FadeLaw) => number,
): { readonly value: number; readonly low: number; readonly high: number } {
  const rows = laws.map(({ law, weight }) => ({ value: figure(law), weight })).sort((a, b) => a.value - b.value);
  const at = (share: number) => {
    let passed = 0;
    for (const row of rows) {
      passed += row.weight;
      if (passed >= share) return row.value;
    }
    return rows[rows.length - 1].value;
  };
  return { value: at(0.5), low: at(0.05), high: at(0.95) };
}
