import { type Finish, finishText, sameFinish } from "../surface/finish.ts";
import type { FinishDraws } from "./draws.ts";
import type { FinishRating } from "./rating.ts";
import { AS_GOOD, mean, type Objective } from "./score.ts";

/** One candidate's standing: its score averaged over the draws, and the score under each. */
export interface Standing {
  readonly finish: Finish;
  readonly rating: FinishRating;
  readonly score: number;
  readonly drawn: readonly number[];
}

/** Which finishes are as good as the best, which one to take, and how sure. Standings from dull to smooth. */
export interface Comparison {
  readonly objective: Objective;
  readonly standings: readonly Standing[];
  readonly best: number;
  readonly plateau: readonly [first: number, last: number];
  readonly pick: number;
  readonly cliff: "smoother" | "duller" | null;
  readonly sureShare: number;
}

/** The two sides' losses must differ by so many times what counts as nothing before one of them is called a cliff. */
const CLIFF_IN_AS_GOOD = 1.5;

/** The score of a rating under the registry's assumptions. */
export function ownScore(rating: FinishRating, objective: Objective): number {
  if (objective === "leastHook") return rating.localScore;
  return objective === "heldChance" ? rating.heldChance : rating.chance;
}

/**
 * Each draw is scored locally; what it differs from the local score under the registry's values is added to the map's own score. So the draws' common
 * error cancels and their spread stays.
 */
export function standingOf(rating: FinishRating, draws: readonly FinishDraws[], objective: Objective): Standing {
  const own = ownScore(rating, objective);
  const name = finishText(rating.finish);
  const drawn = draws
    .filter((block) => block.finish === name)
    .toSorted((a, b) => a.from - b.from)
    .flatMap((block) => block.scores)
    .map((score) => bounded(own + score - rating.localScore, objective));
  return { finish: rating.finish, rating, score: drawn.length > 0 ? mean(drawn) : own, drawn };
}

function bounded(score: number, objective: Objective): number {
  return objective === "leastHook" ? score : Math.min(1, Math.max(0, score));
}

/** @param standings at least one, from dull to smooth. @param today what is on the ball; null where nobody knows it */
export function compare(standings: readonly Standing[], objective: Objective, today: Finish | null): Comparison {
  const tolerance = AS_GOOD[objective];
  const best = standings.reduce((top, standing, i) => (standing.score > standings[top].score ? i : top), 0);
  const good = (i: number) => standings[i].score >= standings[best].score - tolerance;
  let [first, last] = [best, best];
  while (first > 0 && good(first - 1)) first--;
  while (last < standings.length - 1 && good(last + 1)) last++;
  const cliff = cliffSide(standings, best, tolerance);
  const pick = middleOf(standings, first, last, cliff, today);
  return { objective, standings, best, plateau: [first, last], pick, cliff, sureShare: shareWithin(standings, pick, tolerance) };
}

/** The plateau's middle; of two middles the one away from the cliff, else today's finish, which costs no work, else the better one. */
function middleOf(standings: readonly Standing[], first: number, last: number, cliff: Comparison["cliff"], today: Finish | null): number {
  const [lower, upper] = [Math.floor((first + last) / 2), Math.ceil((first + last) / 2)];
  if (lower === upper) return lower;
  if (cliff !== null) return cliff === "duller" ? upper : lower;
  const isToday = ({ finish }: Standing) => today !== null && sameFinish(finish, today);
  if (isToday(standings[lower])) return lower;
  return isToday(standings[upper]) || standings[upper].score > standings[lower].score ? upper : lower;
}

function cliffSide(standings: readonly Standing[], best: number, tolerance: number): "smoother" | "duller" | null {
  const top = standings[best].score;
  const dullLoss = top - standings[0].score;
  const smoothLoss = top - standings[standings.length - 1].score;
  const steep = CLIFF_IN_AS_GOOD * tolerance;
  if (Math.max(dullLoss, smoothLoss) < steep || Math.abs(dullLoss - smoothLoss) < tolerance) return null;
  return smoothLoss > dullLoss ? "smoother" : "duller";
}

/** Share of the draws in which the pick is as good as that draw's best; 0 before there are draws. */
function shareWithin(standings: readonly Standing[], pick: number, tolerance: number): number {
  const draws = Math.min(...standings.map((standing) => standing.drawn.length));
  if (draws === 0) return 0;
  let within = 0;
  for (let draw = 0; draw < draws; draw++) {
    const best = Math.max(...standings.map((standing) => standing.drawn[draw]));
    if (standings[pick].drawn[draw] >= best - tolerance) within++;
  }
  return within / draws;
}

/** The 5 and 95 % points of a set of numbers; both the value itself where there are fewer than two. */
export function band(values: readonly number[], value: number): { low: number; high: number } {
  if (values.length < 2) return { low: value, high: value };
  const sorted = values.toSorted((a, b) => a - b);
  const at = (share: number) => sorted[Math.round(share * (sorted.length - 1))];
  return { low: Math.min(value, at(0.05)), high: Math.max(value, at(0.95)) };
}
