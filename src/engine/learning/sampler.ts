import { deriveSeed, normalDeviate, uniformSource } from "../random.ts";
import { cholesky, lowerTimes, meanAndCovariance } from "./matrix.ts";

/** What a chain of samples came to. */
export interface Sampled {
  /** Draws of all chains one after the other, thinned. */
  readonly draws: readonly (readonly number[])[];
  /** Largest Gelman–Rubin factor over the coordinates: near 1 where the chains agree. */
  readonly worstRhat: number;
}

const CHAINS = 4;
/** Of a chain, the first half is thrown away; of the rest so many are kept. */
const KEPT_A_CHAIN = 250;
/** How often the proposal is fitted to what has been seen in the first half. */
const ADAPT_EVERY = 200;

/**
 * Random-walk Metropolis with a proposal fitted to the chain in its first half and then held (Haario, Saksman & Tamminen 2001; scale 2.38/√d by Roberts,
 * Gelman & Gilks 1997). Four chains from places about the start.
 *
 * @param logDensity but for a constant; −∞ where it may not go
 * @param start a place of finite density. @param firstSd of the first steps, by coordinate, > 0
 */
export function sample(
  logDensity: (place: readonly number[]) => number,
  start: readonly number[],
  firstSd: readonly number[],
  steps: number,
  seed: number,
): Sampled {
  const chains = Array.from({ length: CHAINS }, (_, chain) => runChain(logDensity, start, firstSd, steps, deriveSeed(seed, chain)));
  return { draws: chains.flat(), worstRhat: worstRhat(chains) };
}

function runChain(
  logDensity: (place: readonly number[]) => number,
  start: readonly number[],
  firstSd: readonly number[],
  steps: number,
  seed: number,
): readonly (readonly number[])[] {
  const uniform = uniformSource(seed);
  const normal = () => normalDeviate(uniform());
  const size = start.length;
  const scale = 2.38 / Math.sqrt(size);
  let lower: readonly (readonly number[])[] = firstSd.map((sd, i) => firstSd.map((_, k) => (i === k ? sd : 0)));
  let at = dispersed(logDensity, start, firstSd, normal);
  let density = logDensity(at);
  const seen: (readonly number[])[] = [];
  const kept: (readonly number[])[] = [];
  const half = Math.floor(steps / 2);
  const every = Math.max(1, Math.floor((steps - half) / KEPT_A_CHAIN));
  for (let step = 0; step < steps; step++) {
    const off = lowerTimes(
      lower,
      start.map(() => scale * normal()),
    );
    const next = at.map((value, i) => value + off[i]);
    const there = logDensity(next);
    if (Math.log(uniform() + 1e-300) < there - density) [at, density] = [next, there];
    if (step < half) {
      seen.push(at);
      if (step >= ADAPT_EVERY && step % ADAPT_EVERY === 0) lower = fitted(seen.slice(Math.floor(seen.length / 3)), firstSd);
    } else if ((step - half) % every === 0) kept.push(at);
  }
  return kept;
}

/** A start of its own for each chain; where that is outside, nearer and nearer to the common one. */
function dispersed(
  logDensity: (place: readonly number[]) => number,
  start: readonly number[],
  firstSd: readonly number[],
  normal: () => number,
): readonly number[] {
  for (let share = 1; share > 0.01; share /= 2) {
    const place = start.map((value, i) => value + share * firstSd[i] * normal());
    if (Number.isFinite(logDensity(place))) return place;
  }
  return start;
}

function fitted(seen: readonly (readonly number[])[], firstSd: readonly number[]): number[][] {
  const { covariance } = meanAndCovariance(seen);
  return cholesky(covariance.map((row, i) => row.map((value, k) => value + (i === k ? 1e-4 * firstSd[i] ** 2 : 0))));
}

/** Gelman & Rubin (1992): spread within chains against spread of their means. */
function worstRhat(chains: readonly (readonly (readonly number[])[])[]): number {
  const length = chains[0].length;
  return Math.max(
    ...chains[0][0].map((_, i) => {
      const means = chains.map((chain) => chain.reduce((sum, draw) => sum + draw[i], 0) / length);
      const all = means.reduce((sum, mean) => sum + mean, 0) / chains.length;
      const between = (length * means.reduce((sum, mean) => sum + (mean - all) ** 2, 0)) / (chains.length - 1);
      const within =
        chains.reduce((sum, chain, c) => sum + chain.reduce((squares, draw) => squares + (draw[i] - means[c]) ** 2, 0) / (length - 1), 0) /
        chains.length;
      return within > 0 ? Math.sqrt((length - 1) / length + between / (length * within)) : 1;
    }),
  );
}
