import { deriveSeed, evenPoints, normalDeviate, uniformSource } from "../../random.ts";
import { effectiveNumber } from "../../worlds/effectiveNumber.ts";
import { cholesky, lowerTimes, type Matrix } from "../matrix.ts";
import type { InWorld } from "./inWorld.ts";
import { PLACE_SIZE, type Place } from "./parameters.ts";

/** A world with its share of what is believed before the shots, and what they say in it. */
export interface CloudWorld {
  readonly weight: number;
  readonly seen: () => Pick<InWorld, "logLikelihood">;
}

/** A house and a hand in one of the worlds that may have thrown the shots: all count alike. */
export interface Particle {
  /** Place among the worlds that were asked. */
  readonly world: number;
  readonly place: Place;
}

interface Weighed extends Particle {
  readonly log: number;
}

/** Each time the likelihood is let in further, so many of the particles' worth is kept. */
const KEPT = 0.5;
/** How often each is moved every time. */
const MOVES = 4;
/** The share of moves that is taken where a random walk explores best, in several dimensions (Roberts, Gelman and Gilks 1997: .234; a little more in few). */
const TAKEN = 0.28;
/** The likelihood is all in after so many times, or the shots are such that nothing says them. */
const MOST_ROUNDS = 40;

/**
 * Which houses and hands, in which worlds, may have thrown the shots: a cloud of the priors is let down to the posterior step by step, the likelihood taken to a
 * power that rises from 0 to 1; at each step it is drawn anew by its weights and every particle moved within its world by Metropolis' rule (sequential Monte
 * Carlo: Del Moral, Doucet and Jasra 2006, with the power chosen as Jasra et al. 2011 do). Bent and narrow clouds are followed, and the share of each world is
 * that of its own part of the cloud.
 *
 * @param size particles, ≥ 2
 */
export function cloudOf(worlds: readonly CloudWorld[], size: number, seed: number): readonly Particle[] {
  const uniform = uniformSource(deriveSeed(seed, 1));
  const unit = evenPoints(size, PLACE_SIZE, seed);
  const chosen = drawn(
    worlds.map(({ weight }) => weight),
    size,
    uniform(),
  );
  let cloud: readonly Weighed[] = byWorld(
    chosen.map((world, i) => ({ world, place: Array.from({ length: PLACE_SIZE }, (_, k) => normalDeviate(unit[i * PLACE_SIZE + k])) })),
    (world) => {
      const { logLikelihood } = worlds[world].seen();
      return ({ place }) => ({ world, place, log: logLikelihood(place) });
    },
  );
  let power = 0;
  let scale = 1;
  for (let round = 0; power < 1 && round < MOST_ROUNDS; round++) {
    const next = nextPower(cloud, power);
    const best = Math.max(...cloud.map(({ log }) => log));
    const weights = cloud.map(({ log }) => Math.exp((next - power) * (log - best)));
    cloud = drawn(weights, size, uniform()).map((at) => cloud[at]);
    power = next;
    const lower = spreadWithin(cloud);
    let taken = 0;
    cloud = byWorld(cloud, (world) => {
      const { logLikelihood } = worlds[world].seen();
      return (from) => {
        let here = from;
        for (let move = 0; move < MOVES; move++) {
          const off = lowerTimes(
            lower,
            here.place.map(() => scale * normalDeviate(uniform())),
          );
          const place = here.place.map((z, k) => z + off[k]);
          const log = logLikelihood(place);
          const gain = power * (log - here.log) + logPrior(place) - logPrior(here.place);
          if (Math.log(uniform() + 1e-300) >= gain) continue;
          here = { world, place, log };
          taken += 1;
        }
        return here;
      };
    });
    scale *= Math.exp(2 * (taken / (MOVES * size) - TAKEN));
  }
  return cloud.map(({ world, place }) => ({ world, place }));
}

/** Logarithm of the prior's density of a place, but for a constant. */
function logPrior(place: Place): number {
  return -0.5 * place.reduce((sum, z) => sum + z * z, 0);
}

/** Does something with each particle, one world after the other. */
function byWorld<T extends Particle, R>(cloud: readonly T[], withWorld: (world: number) => (particle: T) => R): readonly R[] {
  const sorted = cloud.toSorted((a, b) => a.world - b.world);
  let last = -1;
  let use: ((particle: T) => R) | null = null;
  return sorted.map((particle) => {
    if (use === null || particle.world !== last) {
      last = particle.world;
      use = withWorld(last);
    }
    return use(particle);
  });
}

/** Places drawn by weights, as evenly as can be: systematic resampling with one number in [0, 1). */
function drawn(weights: readonly number[], count: number, at: number): readonly number[] {
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const out: number[] = [];
  let passed = 0;
  weights.forEach((weight, i) => {
    passed += (weight / total) * count;
    while (out.length < count && out.length + at < passed) out.push(i);
  });
  while (out.length < count) out.push(weights.length - 1);
  return out;
}

/** The greatest power up to 1 at which the particles, weighed anew, still count as {@link KEPT} of them. */
function nextPower(cloud: readonly Weighed[], power: number): number {
  const best = Math.max(...cloud.map(({ log }) => log));
  const worth = (next: number) => effectiveNumber(cloud.map(({ log }) => Math.exp((next - power) * (log - best))));
  const least = KEPT * cloud.length;
  if (worth(1) >= least) return 1;
  let [low, high] = [power, 1];
  for (let i = 0; i < 30; i++) {
    const middle = (low + high) / 2;
    if (worth(middle) >= least) low = middle;
    else high = middle;
  }
  return Math.max(low, power + 1e-6);
}

/** Cholesky's factor of how places spread within their worlds, all worlds taken together. */
function spreadWithin(cloud: readonly Particle[]): Matrix {
  const middles = new Map<number, { readonly sum: number[]; count: number }>();
  for (const { world, place } of cloud) {
    const own = middles.get(world) ?? { sum: place.map(() => 0), count: 0 };
    place.forEach((z, k) => {
      own.sum[k] += z;
    });
    own.count += 1;
    middles.set(world, own);
  }
  const free = Math.max(1, cloud.length - middles.size);
  const covariance = Array.from({ length: PLACE_SIZE }, (_, i) => Array.from({ length: PLACE_SIZE }, (_one, k) => (i === k ? 1e-4 : 0)));
  for (const { world, place } of cloud) {
    const own = middles.get(world);
    if (own === undefined) continue;
    const off = place.map((z, k) => z - own.sum[k] / own.count);
    for (let i = 0; i < PLACE_SIZE; i++) for (let k = 0; k < PLACE_SIZE; k++) covariance[i][k] += (off[i] * off[k]) / free;
  }
  return cholesky(covariance);
}
