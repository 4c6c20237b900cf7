import { deriveSeed, evenPoints, normalDeviate, uniformSource } from "../../random.ts";
import { effectiveNumber } from "../../worlds/effectiveNumber.ts";
import { cholesky, lowerTimes, type Matrix } from "../matrix.ts";
import type { InWorld } from "./inWorld.ts";
import { HAND_SIZE, HOUSE_SIZE, type Place, placeSize } from "./parameters.ts";

/** A world with its share of what is believed before the shots, and what they say in it. */
export interface CloudWorld {
  readonly weight: number;
  readonly seen: () => Pick<InWorld, "logLikelihood">;
}

/** A house and its hands in one of the worlds that may have thrown the shots: all count alike. */
export interface Particle {
  /** Place among the worlds that were asked. */
  readonly world: number;
  readonly place: Place;
}

/** The particles, and the logarithm of the chance of all that was seen before any of it was known: what two explanations are compared by. */
export interface Cloud {
  readonly particles: readonly Particle[];
  readonly logEvidence: number;
}

interface Weighed extends Particle {
  /** By hand, the logarithm of the chance of its shots. */
  readonly logs: readonly number[];
}

/** Each time the likelihood is let in further, so many of the particles' worth is kept. */
const KEPT = 0.5;
/** How often each is moved every time. */
const MOVES = 4;
/** The share of moves that is taken where a random walk explores best, in several dimensions (Roberts, Gelman and Gilks 1997: .234; a little more in few). */
const TAKEN = 0.28;
/** The likelihood is all in after so many times, or the shots are such that nothing says them. */
const MOST_ROUNDS = 60;

/**
 * Which houses and hands, in which worlds, may have thrown the shots: a cloud of the priors is let down to the posterior step by step, the likelihood taken to a
 * power that rises from 0 to 1; at each step it is drawn anew by its weights and every particle moved within its world by Metropolis' rule (sequential Monte
 * Carlo: Del Moral, Doucet and Jasra 2006, with the power chosen as Jasra et al. 2011 do). Bent and narrow clouds are followed, and the share of each world is
 * that of its own part of the cloud. Where there are several hands each is also moved by itself, which asks only for its own shots.
 *
 * @param hands ≥ 1 @param size particles, ≥ 2
 */
export function cloudOf(worlds: readonly CloudWorld[], hands: number, size: number, seed: number): Cloud {
  const uniform = uniformSource(deriveSeed(seed, 1));
  const dimensions = placeSize(hands);
  const unit = evenPoints(size, dimensions, seed);
  const chosen = drawn(
    worlds.map(({ weight }) => weight),
    size,
    uniform(),
  );
  const first = chosen.map((world, i) => ({
    world,
    place: Array.from({ length: dimensions }, (_, k) => normalDeviate(unit[i * dimensions + k])),
  }));
  const each = Array.from({ length: hands }, (_, hand) => hand);
  let cloud: readonly Weighed[] = byWorld(first, (world) => {
    const { logLikelihood } = worlds[world].seen();
    return ({ place }) => ({ world, place, logs: each.map((hand) => logLikelihood(place, hand)) });
  });
  const strides = { all: 2.38 / Math.sqrt(dimensions), own: 2.38 / Math.sqrt(HAND_SIZE) };
  let power = 0;
  let logEvidence = 0;
  for (let round = 0; power < 1 && round < MOST_ROUNDS; round++) {
    const logs = cloud.map(logOf);
    const next = nextPower(logs, power);
    const best = Math.max(...logs);
    const weights = logs.map((log) => Math.exp((next - power) * (log - best)));
    logEvidence += (next - power) * best + Math.log(weights.reduce((sum, weight) => sum + weight, 0) / size);
    cloud = drawn(weights, size, uniform()).map((at) => cloud[at]);
    power = next;
    const covariance = covarianceWithin(cloud);
    const all = cholesky(covariance);
    const own = each.map((hand) => {
      const at = HOUSE_SIZE + hand * HAND_SIZE;
      return cholesky(covariance.slice(at, at + HAND_SIZE).map((row) => row.slice(at, at + HAND_SIZE)));
    });
    const taken = { all: 0, own: 0 };
    const isTaken = (gain: number) => Math.log(uniform() + 1e-300) < gain;
    cloud = byWorld(cloud, (world) => {
      const { logLikelihood } = worlds[world].seen();
      return (from) => {
        let here = from;
        for (let move = 0; move < MOVES; move++) {
          const place = strode(here.place, 0, all, strides.all, uniform);
          const there = { world, place, logs: each.map((hand) => logLikelihood(place, hand)) };
          if (isTaken(power * (logOf(there) - logOf(here)) + logPrior(place) - logPrior(here.place))) {
            here = there;
            taken.all += 1;
          }
          if (hands === 1) continue;
          for (const hand of each) {
            const moved = strode(here.place, HOUSE_SIZE + hand * HAND_SIZE, own[hand], strides.own, uniform);
            const log = logLikelihood(moved, hand);
            if (!isTaken(power * (log - here.logs[hand]) + logPrior(moved) - logPrior(here.place))) continue;
            here = { world, place: moved, logs: here.logs.with(hand, log) };
            taken.own += 1;
          }
        }
        return here;
      };
    });
    strides.all *= Math.exp(2 * (taken.all / (MOVES * size) - TAKEN));
    strides.own *= Math.exp(2 * (taken.own / (MOVES * size * hands) - TAKEN));
  }
  return { particles: cloud.map(({ world, place }) => ({ world, place })), logEvidence };
}

function logOf({ logs }: Pick<Weighed, "logs">): number {
  return logs.reduce((sum, log) => sum + log, 0);
}

/** A place moved by a random step in the coordinates from `at` on. */
function strode(place: Place, at: number, lower: Matrix, stride: number, uniform: () => number): Place {
  const off = lowerTimes(
    lower,
    lower.map(() => stride * normalDeviate(uniform())),
  );
  return place.map((z, k) => z + (off[k - at] ?? 0));
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
function nextPower(logs: readonly number[], power: number): number {
  const best = Math.max(...logs);
  const worth = (next: number) => effectiveNumber(logs.map((log) => Math.exp((next - power) * (log - best))));
  const least = KEPT * logs.length;
  if (worth(1) >= least) return 1;
  let [low, high] = [power, 1];
  for (let i = 0; i < 30; i++) {
    const middle = (low + high) / 2;
    if (worth(middle) >= least) low = middle;
    else high = middle;
  }
  return Math.max(low, power + 1e-6);
}

/** How places spread within their worlds, all worlds taken together. */
function covarianceWithin(cloud: readonly Particle[]): number[][] {
  const size = cloud[0].place.length;
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
  const covariance = Array.from({ length: size }, (_, i) => Array.from({ length: size }, (_one, k) => (i === k ? 1e-4 : 0)));
  for (const { world, place } of cloud) {
    const own = middles.get(world);
    if (own === undefined) continue;
    const off = place.map((z, k) => z - own.sum[k] / own.count);
    for (let i = 0; i < size; i++) for (let k = 0; k < size; k++) covariance[i][k] += (off[i] * off[k]) / free;
  }
  return covariance;
}
