import { uniformSource } from "#engine/random";

/** A world among those that were tried, with its share of the posterior. */
export interface Weighed {
  readonly place: number;
  readonly weight: number;
}

/**
 * Draws a number of worlds by their weights, as evenly as can be (systematic resampling; Carpenter, Clifford and Fearnhead 1999), and adds up those that come
 * more than once. Drawn in a shuffled order: every so-manieth point of an even sequence is not even at all.
 */
export function resampled(inOrder: readonly Weighed[], count: number, seed: number): readonly Weighed[] {
  const weighed = shuffled(inOrder, seed);
  const total = weighed.reduce((sum, { weight }) => sum + weight, 0);
  const chosen = new Map<number, number>();
  let passed = 0;
  let drawn = 0;
  for (const { place, weight } of weighed) {
    passed += (weight / total) * count;
    while (drawn + 0.5 < passed) {
      chosen.set(place, (chosen.get(place) ?? 0) + 1);
      drawn++;
    }
  }
  return [...chosen].map(([place, times]) => ({ place, weight: times / count }));
}

/** Fisher and Yates' shuffle. */
function shuffled<T>(all: readonly T[], seed: number): readonly T[] {
  const uniform = uniformSource(seed);
  const out = [...all];
  for (let i = out.length - 1; i > 0; i--) {
    const k = Math.floor(uniform() * (i + 1));
    [out[i], out[k]] = [out[k], out[i]];
  }
  return out;
}

/**
 * An order in which the first few stand for all: each next world is the one that brings the weighted means of the features, and of their squares, nearest to
 * those of all (herding; Welling 2009). Without the squares the first would all lie in the middle, and intervals would be too narrow.
 *
 * @param features a row for each world
 */
export function herded(weights: readonly number[], features: readonly (readonly number[])[]): readonly number[] {
  const rows = withSquares(weights, features);
  const size = rows[0].length;
  const left = new Set(weights.keys());
  const sum = new Array<number>(size).fill(0);
  let taken = 0;
  const order: number[] = [];
  while (left.size > 0) {
    let best = -1;
    let least = Number.POSITIVE_INFINITY;
    for (const i of left) {
      let miss = 0;
      for (let k = 0; k < size; k++) miss += ((sum[k] + weights[i] * rows[i][k]) / (taken + weights[i])) ** 2;
      if (miss < least) [best, least] = [i, miss];
    }
    for (let k = 0; k < size; k++) sum[k] += weights[best] * rows[best][k];
    taken += weights[best];
    order.push(best);
    left.delete(best);
  }
  return order;
}

/** Features in standard deviations about their weighted mean, and by how much their squares differ from one: both are nothing in the mean over all. */
function withSquares(weights: readonly number[], features: readonly (readonly number[])[]): readonly (readonly number[])[] {
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const over = (value: (row: readonly number[]) => number) => features.reduce((sum, row, i) => sum + (weights[i] / total) * value(row), 0);
  const spans = features[0].map((_, k) => {
    const mean = over((row) => row[k]);
    return { mean, sd: Math.sqrt(over((row) => (row[k] - mean) ** 2)) };
  });
  return features.map((row) =>
    row.flatMap((value, k) => {
      const z = spans[k].sd > 0 ? (value - spans[k].mean) / spans[k].sd : 0;
      return [z, z * z - 1];
    }),
  );
}
