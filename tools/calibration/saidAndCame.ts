import { band, compare, type Scored, weightedMean } from "#engine/planning/comparison";
import { SITUATIONS } from "#engine/planning/situations";
import { ladderFor } from "./model.ts";

/** How many worlds a plan is computed in. */
const WORLDS = 64;
const AS_GOOD = 0.02;
const BINS = [0, 0.5, 0.7, 0.9, 1.0001] as const;

interface Trial {
  readonly raw: number;
  readonly printed: number;
  readonly came: number;
  /** Share of the finishes whose strikes in the true world lie inside the 90 % interval of the others. */
  readonly covered: number;
  readonly weight: number;
}

/**
 * Plans of the situations with one world taken for the true one: what the other worlds say of how sure the tied group is, and whether it then is within two
 * strikes of the best. A table by what was said.
 *
 * @param ladders world by world, situation by situation @param truths places of worlds, with their shares
 */
export function saidAndCame(
  ladders: readonly (readonly (readonly number[])[])[],
  weights: readonly number[],
  truths: readonly { readonly at: number; readonly weight: number }[],
): string[] {
  const trials = truths.flatMap(({ at, weight }) => SITUATIONS.map((_, k) => trialOf(ladders, weights, at, k, weight)));
  const rows = BINS.slice(1).map((to, i) => ({
    name: `${BINS[i]} to ${Math.min(1, to)}`,
    own: trials.filter(({ raw }) => raw >= BINS[i] && raw < to),
  }));
  return [
    "| share | plans | said | printed (lower limit) | came | strikes inside their 90 % interval |",
    "|---|---|---|---|---|---|",
    ...[...rows, { name: "all", own: trials }].flatMap(({ name, own }) =>
      own.length === 0
        ? []
        : [
            `| ${name} | ${own.length} | ${mean(own, "raw").toFixed(2)} | ${mean(own, "printed").toFixed(2)} | ${mean(own, "came").toFixed(2)} | ${mean(own, "covered").toFixed(2)} |`,
          ],
    ),
  ];
}

function trialOf(
  ladders: readonly (readonly (readonly number[])[])[],
  weights: readonly number[],
  truth: number,
  k: number,
  weight: number,
): Trial {
  const used = weights.flatMap((_, i) => (i === truth ? [] : [i])).slice(0, WORLDS);
  const own = used.map((i) => weights[i]);
  const finishes = ladderFor(SITUATIONS[k]);
  const standings = finishes.map((finish, f): Scored => {
    const drawn = used.map((i) => ladders[i][k][f]);
    return { finish, score: weightedMean(drawn, own), drawn };
  });
  const { plateau, share, sureShare } = compare(standings, own, "strikeChance", null);
  const row = ladders[truth][k];
  const group = row.slice(plateau[0], plateau[1] + 1);
  const inside = standings.filter(({ drawn, score }, f) => {
    const { low, high } = band(drawn, score, own);
    return row[f] >= low && row[f] <= high;
  });
  return {
    covered: inside.length / row.length,
    raw: share,
    printed: sureShare,
    came: Math.max(...group) >= Math.max(...row) - AS_GOOD ? 1 : 0,
    weight,
  };
}

function mean(trials: readonly Trial[], what: "raw" | "printed" | "came" | "covered"): number {
  const total = trials.reduce((sum, { weight }) => sum + weight, 0);
  return trials.reduce((sum, one) => sum + one.weight * one[what], 0) / total;
}
