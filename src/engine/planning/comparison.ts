import { effectiveRaUm, type Finish, finishText, sameFinish } from "../surface/finish.ts";
import { effectiveNumber } from "../worlds/effectiveNumber.ts";
import { weightedMean } from "../worlds/weightedMean.ts";
import { CLOSE, type Metric } from "./metric.ts";
import type { FinishRating } from "./rating.ts";
import type { WorldBlock } from "./worldScores.ts";

/** A finish with its score in the mean over some worlds, and in each of them. */
export interface Scored {
  readonly finish: Finish;
  readonly score: number;
  readonly drawn: readonly number[];
}

/** One candidate's standing. */
export interface Standing extends Scored {
  readonly rating: FinishRating;
  /** Strike chance on the line that is played today, world by world; empty where it was not asked. */
  readonly onTodaysLine: readonly number[];
}

/** What each of some worlds counts for. */
export interface Shares {
  readonly weights: readonly number[];
  /** Where nothing is believed but the priors: what is said of how sure a pick is comes true there too. */
  readonly priorWeights: readonly number[];
}

/** The worlds that standings were computed in, by their shares. */
export interface Worlds extends Shares {
  readonly blocks: readonly WorldBlock[];
}

/** Which finishes cannot be told apart, which one to take, and how sure. Standings from dull to smooth. */
export interface Comparison<S extends Scored = Standing> {
  readonly metric: Metric;
  readonly standings: readonly S[];
  readonly best: number;
  readonly plateau: readonly [first: number, last: number];
  readonly pick: number;
  readonly cliff: "smoother" | "duller" | null;
  /**
   * Share of the worlds in which the group's best is as good as the best of all; and what is safe to say of it: the lower limit of that share, by what is
   * believed and by the priors alone, whichever is less.
   */
  readonly share: number;
  readonly sureShare: number;
}

/** The two sides' losses must differ by so many times what counts as nothing before one of them is called a cliff. */
const CLIFF_IN_AS_GOOD = 1.5;
/** One side of 90 %. */
const Z_90_ONE_SIDED = 1.2816;
/** More is never said: no set of worlds holds everything that can be otherwise. */
const MOST_SAID = 0.9;
/** Differences of means closer than so many of their standard errors are no differences. */
const ERRORS_OF_NOTHING = 2;

/** The worlds of some blocks: those through the session, once there are any; each by its share and by how well it says what was seen. */
export function worldsOf(blocks: readonly WorldBlock[]): Worlds {
  const whole = blocks.filter(({ span }) => span === "session");
  const used = (whole.length > 0 ? whole : blocks).toSorted((a, b) => a.from - b.from);
  const fits = used.flatMap(({ fits: own }) => own);
  const best = Math.max(...fits);
  const fitted = (shares: readonly number[]) => shares.map((share, i) => share * Math.exp(fits[i] - best));
  return {
    blocks: used,
    weights: fitted(used.flatMap(({ weights }) => weights)),
    priorWeights: fitted(used.flatMap(({ priorWeights }) => priorWeights)),
  };
}

/** A finish over the worlds; before there are any its score in the middle one. */
export function standingOf(rating: FinishRating, { blocks, weights }: Worlds): Standing {
  const name = finishText(rating.finish);
  const rows = blocks.flatMap(({ finishes }) => finishes.filter(({ finish }) => finish === name));
  const drawn = rows.flatMap(({ scores }) => scores);
  const onTodaysLine = rows.flatMap((row) => row.onTodaysLine ?? []);
  return { finish: rating.finish, rating, score: drawn.length > 0 ? weightedMean(drawn, weights) : rating.score, drawn, onTodaysLine };
}

/** @param standings at least one, from dull to smooth @param today what is on the ball; null where nobody knows it */
export function compare<S extends Scored>(
  standings: readonly S[],
  { weights, priorWeights }: Shares,
  metric: Metric,
  today: Finish | null,
): Comparison<S> {
  const best = standings.reduce((top, standing, i) => (standing.score > standings[top].score ? i : top), 0);
  const tied = (i: number) => standings[best].score - standings[i].score <= tieOf(standings[best], standings[i], weights, metric);
  const [first, last] = tiedFrom(standings, best, tied);
  const within = (shares: readonly number[]) => shareWithin(standings, shares, [first, last], CLOSE[metric].asGood);
  const safe = (shares: readonly number[]) => lowerLimit(within(shares), effectiveNumber(shares));
  return {
    metric,
    standings,
    best,
    plateau: [first, last],
    pick: today === null ? best : nearest(standings, first, last, today),
    cliff: cliffSide(standings, best, CLOSE[metric].asGood),
    share: within(weights),
    sureShare: standings[best].drawn.length === 0 ? 0 : Math.min(MOST_SAID, safe(weights), safe(priorWeights)),
  };
}

/** From the dullest to the smoothest of those tied with the best: who is as good as one of them is one too, however well it is known to be behind the best. */
function tiedFrom(standings: readonly Scored[], best: number, isTied: (i: number) => boolean): readonly [first: number, last: number] {
  let [first, last] = [best, best];
  while (first > 0 && isTied(first - 1)) first--;
  while (last < standings.length - 1 && isTied(last + 1)) last++;
  const least = Math.min(...standings.slice(first, last + 1).map(({ score }) => score));
  while (first > 0 && standings[first - 1].score >= least) first--;
  while (last < standings.length - 1 && standings[last + 1].score >= least) last++;
  return [first, last];
}

/** By how much two means may differ and still be one: what nobody would notice, or what comes of having so few worlds. */
function tieOf(one: Scored, other: Scored, weights: readonly number[], metric: Metric): number {
  if (one.drawn.length < 2) return CLOSE[metric].tied;
  return Math.max(CLOSE[metric].tied, ERRORS_OF_NOTHING * errorOfDifference(one.drawn, other.drawn, weights));
}

/** Standard error of the mean of a difference over the worlds. */
export function errorOfDifference(one: readonly number[], other: readonly number[], weights: readonly number[]): number {
  const differences = one.map((score, i) => score - other[i]);
  const middle = weightedMean(differences, weights);
  const variance = weightedMean(
    differences.map((difference) => (difference - middle) ** 2),
    weights,
  );
  return Math.sqrt(variance / effectiveNumber(weights));
}

/** Of those that cannot be told apart the one nearest today's in steps of the ladder: it costs the least work; of two as near the duller. */
function nearest(standings: readonly Scored[], first: number, last: number, today: Finish): number {
  const at = placeOf(standings, today);
  let pick = first;
  for (let i = first + 1; i <= last; i++) if (Math.abs(i - at) < Math.abs(pick - at) - 1e-9) pick = i;
  return pick;
}

/** Where today's finish stands on the ladder of the candidates; between two of them where it is none. */
function placeOf(standings: readonly Scored[], today: Finish): number {
  const same = standings.findIndex(({ finish }) => sameFinish(finish, today));
  if (same >= 0) return same;
  const ra = effectiveRaUm(today);
  const duller = standings.filter(({ finish }) => effectiveRaUm(finish) > ra).length;
  return duller - 0.5;
}

function shareWithin(
  standings: readonly Scored[],
  weights: readonly number[],
  [first, last]: readonly [number, number],
  asGood: number,
): number {
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  let within = 0;
  for (const [world, weight] of weights.entries()) {
    const scores = standings.map(({ drawn }) => drawn[world]);
    if (Math.max(...scores.slice(first, last + 1)) >= Math.max(...scores) - asGood) within += weight;
  }
  return total > 0 ? within / total : 0;
}

/** The lower limit, 90 % on one side, of a share seen in so many cases (Wilson 1927). */
export function lowerLimit(share: number, cases: number, z = Z_90_ONE_SIDED): number {
  if (cases <= 0) return 0;
  const spread = (z * z) / cases;
  const half = z * Math.sqrt((share * (1 - share)) / cases + (spread / cases) * 0.25);
  return Math.min(1, Math.max(0, (share + spread / 2 - half) / (1 + spread)));
}

function cliffSide(standings: readonly Scored[], best: number, asGood: number): "smoother" | "duller" | null {
  const top = standings[best].score;
  const dullLoss = top - standings[0].score;
  const smoothLoss = top - standings[standings.length - 1].score;
  const steep = CLIFF_IN_AS_GOOD * asGood;
  if (Math.max(dullLoss, smoothLoss) < steep || Math.abs(dullLoss - smoothLoss) < asGood) return null;
  return smoothLoss > dullLoss ? "smoother" : "duller";
}

/** The 5 and 95 % points of numbers with their weights, the value itself between them; both the value where there are fewer than two. */
export function band(values: readonly number[], value: number, weights?: readonly number[]): { low: number; high: number } {
  if (values.length < 2) return { low: value, high: value };
  const sorted = values.map((one, i) => ({ one, weight: weights?.[i] ?? 1 })).sort((a, b) => a.one - b.one);
  const total = sorted.reduce((sum, { weight }) => sum + weight, 0);
  const at = (share: number) => {
    let passed = 0;
    for (const { one, weight } of sorted) {
      passed += weight;
      if (passed >= share * total) return one;
    }
    return sorted[sorted.length - 1].one;
  };
  return { low: Math.min(value, at(0.05)), high: Math.max(value, at(0.95)) };
}
