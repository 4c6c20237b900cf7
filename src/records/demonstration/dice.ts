import { normalDeviate, uniformSource } from "#engine/random";

/** Choices from one seed, in the order in which they are asked for. */
export interface Dice {
  /** Uniform in [0, 1). */
  readonly roll: () => number;
  between(from: number, to: number): number;
  /** A whole number, both ends included. */
  whole(from: number, to: number): number;
  chance(probability: number): boolean;
  normal(mean: number, spread: number): number;
  pick<T>(list: readonly T[]): T;
  /** One of the list by its share; shares need not add up to anything. */
  weighted<T>(list: readonly (readonly [T, number])[]): T;
}

export function dice(seed: number): Dice {
  const roll = uniformSource(seed);
  const whole = (from: number, to: number): number => from + Math.floor(roll() * (to - from + 1));
  return {
    roll,
    between: (from, to) => from + roll() * (to - from),
    whole,
    chance: (probability) => roll() < probability,
    normal: (mean, spread) => mean + spread * normalDeviate(roll()),
    pick: (list) => list[whole(0, list.length - 1)],
    weighted(list) {
      let left = roll() * list.reduce((sum, [, share]) => sum + share, 0);
      for (const [thing, share] of list) {
        left -= share;
        if (left < 0) return thing;
      }
      return list[list.length - 1][0];
    },
  };
}
