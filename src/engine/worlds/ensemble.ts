import type { Assumed } from "../assumptions.ts";
import { type Ball, type CoverId, coversOf } from "../ball/ball.ts";
import { crc32, fromBase64 } from "../bytes.ts";
import { EngineFault } from "../fault.ts";
import { CARRY } from "../pins/carryData.ts";
import { evenPoints } from "../random.ts";
import { ENSEMBLE_DATA, type EnsembleData } from "./ensembleData.ts";
import { NIGHT_SIZE, type Night, nightAt, PARAMETER_IDS, worldAt } from "./parameters.ts";

/** One complete set of everything nobody knows for certain, with its share of what is believed. */
export interface World {
  /** Place in the ensemble, where the first few stand for all; further on, the number of the draw. */
  readonly id: number;
  /** Shares of the whole ensemble sum to one. */
  readonly weight: number;
  /** Its share where nothing is believed but the priors: what *sure* is held against. Shares of the whole ensemble sum to one. */
  readonly priorWeight: number;
  /** Where it stands in the unit cube of the priors. */
  readonly unit: Float64Array;
  readonly values: Partial<Assumed>;
  /** What this house and night are like, and by how much the delivery is off, should this world be the true one. */
  readonly night: Night;
  /** Which cover the ball has in this world, should nobody know it: a number in [0, 1). */
  readonly coverAt: number;
}

/** The worlds that every plan draws from. */
export interface Ensemble {
  /** Changes with every number in it: what a plan names. */
  readonly digest: string;
  readonly worlds: readonly World[];
  /** How many worlds can be drawn in all: the same constants, on further nights. */
  readonly draws: number;
  /** A world by its number, from 0 to `draws` − 1: the first are `worlds` themselves. */
  readonly drawn: (draw: number) => World;
}

/** The version of this form. */
export const ENSEMBLE_VERSION = 2;
const SIXTEEN = 65535;
const REMAKE = "`npm run calibrate` makes a new one";
/** Nights are drawn evenly over the worlds; the seed is no one's to choose. */
const NIGHT_SEED = 17;
/** A world's constants were weighed, its night was not: where few worlds say what was seen, each is looked at on so many further nights. */
const FURTHER_NIGHTS = 7;

/**
 * Reads what `npm run calibrate` wrote.
 *
 * @throws EngineFault for another version, a damaged text, worlds without weight, or a carry table that the worlds were not weighed with
 */
export function readEnsemble(data: EnsembleData, carry: string = CARRY.provenance.design): Ensemble {
  const wrong = (path: string, value: unknown, allowed: string): never => {
    throw new EngineFault([{ path: `ensemble.${path}`, value, allowed: `${allowed}; ${REMAKE}` }]);
  };
  if (data.version !== ENSEMBLE_VERSION) wrong("version", data.version, `${ENSEMBLE_VERSION}`);
  if (data.carry !== carry) wrong("carry", data.carry, `the carry table in use, ${carry}`);
  if (data.parameters.join() !== PARAMETER_IDS.join()) wrong("parameters", data.parameters.length, "the parameters in use, in their order");
  const bytes = fromBase64(data.units);
  const count = data.weights.length;
  if (bytes.length !== 2 * count * PARAMETER_IDS.length)
    wrong("units", `${bytes.length} bytes`, `${2 * count * PARAMETER_IDS.length} bytes`);
  if (data.likeliness.length !== count) wrong("likeliness", data.likeliness.length, `${count} numbers`);
  const digest = digestOf(bytes, [...data.weights, ...data.likeliness, data.unfitted]);
  if (digest !== data.digest) wrong("digest", digest, data.digest);
  const total = data.weights.reduce((sum, weight) => sum + weight, 0);
  if (!(total > 0) || data.weights.some((weight) => !(weight >= 0))) wrong("weights", total, "numbers of 0 or more that are not all 0");
  if (data.likeliness.some((one) => !(one >= 0)) || !(data.unfitted > 0 && data.unfitted <= 1))
    wrong("likeliness", data.unfitted, "numbers of 0 or more, and a share unfitted above 0");
  const prior = data.weights.map((weight, i) => weight / ((1 - data.unfitted) * data.likeliness[i] + data.unfitted));
  const priorTotal = prior.reduce((sum, weight) => sum + weight, 0);
  const nights = evenPoints(count * (1 + FURTHER_NIGHTS), NIGHT_SIZE + 1, NIGHT_SEED);
  const worlds = data.weights.map((weight, id): World => {
    const unit = Float64Array.from(PARAMETER_IDS, (_, i) => {
      const at = 2 * (id * PARAMETER_IDS.length + i);
      return ((bytes[at] << 8) | bytes[at + 1]) / SIXTEEN;
    });
    const offset = id * (NIGHT_SIZE + 1);
    return {
      id,
      weight: weight / total,
      priorWeight: prior[id] / priorTotal,
      unit,
      values: worldAt(unit),
      night: nightAt(nights, offset),
      coverAt: nights[offset + NIGHT_SIZE],
    };
  });
  const drawn = (draw: number): World => {
    const world = worlds[draw % count];
    const offset = draw * (NIGHT_SIZE + 1);
    return draw < count ? world : { ...world, id: draw, night: nightAt(nights, offset), coverAt: nights[offset + NIGHT_SIZE] };
  };
  return { digest, worlds, draws: count * (1 + FURTHER_NIGHTS), drawn };
}

/** @param numbers weights, then likeliness, then the share unfitted */
export function digestOf(bytes: Uint8Array, numbers: readonly number[]): string {
  const text = Uint8Array.from(numbers.join(), (one) => one.charCodeAt(0));
  return `worlds-${(numbers.length - 1) / 2}-${crc32(bytes).toString(16).padStart(8, "0")}${crc32(text).toString(16).padStart(8, "0")}`;
}

/** Units as they are stored: 16 bits each, so that what is computed from a stored world is what was weighed. */
export function packUnits(units: readonly ArrayLike<number>[]): Uint8Array {
  const words = units.flatMap((unit) => Array.from(unit, (share) => Math.round(share * SIXTEEN)));
  return Uint8Array.from(words.flatMap((word) => [word >> 8, word & 255]));
}

let kept: Ensemble | null = null;

/** The ensemble that ships with the engine, read once. */
export function ensemble(): Ensemble {
  kept ??= readEnsemble(ENSEMBLE_DATA);
  return kept;
}

/** The cover that a ball has in a world: its own, or where nobody knows it one of those it may be. */
export function coverIn(world: World, ball: Pick<Ball, "cover" | "unknown" | "job">): CoverId {
  const covers = coversOf(ball);
  return covers[Math.floor(world.coverAt * covers.length)];
}
