import { deriveSeed, normalDeviate, uniformSource } from "#engine/random";
import { COEFFICIENT_NAMES, COEFFICIENTS, type Coefficients, coefficientsAt } from "./coefficients.ts";
import { POCKET_SIDE, QUALITIES, type Run } from "./design.ts";
import { committee, type Network, type Sample, trainNetwork } from "./emulator.ts";
import { CARRY_FACTS, type Chances, deviation, kindIndex, UNSAID, UNSAID_NAMES, type Unsaid } from "./facts.ts";
import type { Hit, Outcome } from "./hit.ts";
import { isIdealPath, KINDS, kindOf } from "./kinds.ts";

/** The hit that stands for the published figures, but for its place and angle. */
export const TYPICAL = { speedMph: 17, slip: 0.5, verticalSpin: 3, massLb: 15 } as const;
const RANGES = { ...POCKET_SIDE, ...QUALITIES } as const;
const HIT_NAMES = Object.keys(RANGES) as readonly (keyof Hit)[];

/** A hit and its coefficients as the network's inputs, each −1 … 1 over its range. */
export function networkInput(
  hit: Hit,
  coefficients: Coefficients,
  into = new Float64Array(HIT_NAMES.length + COEFFICIENT_NAMES.length),
): Float64Array {
  HIT_NAMES.forEach((name, i) => {
    const [low, high] = RANGES[name];
    into[i] = (2 * (hit[name] - low)) / (high - low) - 1;
  });
  COEFFICIENT_NAMES.forEach((name, i) => {
    const { low, high } = COEFFICIENTS[name];
    into[HIT_NAMES.length + i] = (2 * (coefficients[name] - low)) / (high - low) - 1;
  });
  return into;
}

export function sampleOf({ hit, coefficients }: Run, outcome: Outcome): Sample {
  return { input: networkInput(hit, coefficients), kind: kindOf(outcome), onPath: isIdealPath(outcome) };
}

/** Several networks from different beginnings: their mean is the emulator, their disagreement its error. */
export function trainCommittee(samples: readonly Sample[], size: number, epochs: number, seed: number): readonly Network[] {
  return Array.from({ length: size }, (_, i) => trainNetwork(samples, KINDS.length, epochs, deriveSeed(seed, i)));
}

/** What the networks say of a typical ball under some coefficients, at any place and angle. */
export function chancesUnder(networks: readonly Network[], coefficients: Coefficients): Chances {
  const ask = committee(networks);
  const input = new Float64Array(HIT_NAMES.length + COEFFICIENT_NAMES.length);
  const at = (offsetIn: number, entryDeg: number) => ask(networkInput({ ...TYPICAL, offsetIn, entryDeg }, coefficients, input));
  return {
    kind: (kind, offsetIn, entryDeg) => at(offsetIn, entryDeg)[kindIndex(kind)],
    idealPath: (offsetIn, entryDeg) => at(offsetIn, entryDeg)[KINDS.length],
  };
}

/** One point of the search: coefficients and what the figures leave unsaid, all as shares of their ranges. */
export interface Candidate {
  readonly unit: Float64Array;
  readonly coefficients: Coefficients;
  readonly unsaid: Unsaid;
  readonly logLikelihood: number;
}

const FITTED = CARRY_FACTS.filter(({ use }) => use === "fitted");
const DIMENSIONS = COEFFICIENT_NAMES.length + UNSAID_NAMES.length;

function candidateAt(networks: readonly Network[], unit: Float64Array): Candidate {
  const coefficients = coefficientsAt(unit);
  const unsaid = Object.fromEntries(
    UNSAID_NAMES.map((name, i) => {
      const { low, high } = UNSAID[name];
      return [name, low + (high - low) * unit[COEFFICIENT_NAMES.length + i]];
    }),
  ) as Unsaid;
  const chances = chancesUnder(networks, coefficients);
  let logLikelihood = 0;
  for (const fact of FITTED) {
    // Student's t with four degrees of freedom: a fact that cannot be met does not drag all others along.
    logLikelihood -= 2.5 * Math.log(1 + deviation(fact, fact.predict(chances, unsaid)) ** 2 / 4);
  }
  return { unit, coefficients, unsaid, logLikelihood };
}

/** What a candidate says of every fact, those kept out as well. */
export function predictionsOf(networks: readonly Network[], { coefficients, unsaid }: Candidate): readonly number[] {
  const chances = chancesUnder(networks, coefficients);
  return CARRY_FACTS.map((fact) => fact.predict(chances, unsaid));
}

export interface Chain {
  readonly kept: readonly Candidate[];
  readonly accepted: number;
}

const START_TRIES = 200;
const STRIDE = 0.12;

/**
 * A walk through the plausible coefficients: random-walk Metropolis, uniform prior over the ranges, a third of the coordinates moved at a time.
 * The first half is thrown away.
 */
export function walk(networks: readonly Network[], steps: number, seed: number): Chain {
  const uniform = uniformSource(seed);
  let now = best(Array.from({ length: START_TRIES }, () => candidateAt(networks, Float64Array.from({ length: DIMENSIONS }, uniform))));
  const kept: Candidate[] = [];
  let accepted = 0;
  for (let step = 0; step < steps; step++) {
    const unit = now.unit.map((value) => (uniform() < 1 / 3 ? reflected(value + STRIDE * normalDeviate(uniform())) : value));
    const next = candidateAt(networks, unit);
    if (Math.log(uniform()) < next.logLikelihood - now.logLikelihood) {
      now = next;
      accepted++;
    }
    if (step >= steps / 2) kept.push(now);
  }
  return { kept, accepted: accepted / steps };
}

function best(candidates: readonly Candidate[]): Candidate {
  return candidates.reduce((top, candidate) => (candidate.logLikelihood > top.logLikelihood ? candidate : top));
}

/** Steps over an edge come back from it. */
function reflected(value: number): number {
  const once = Math.abs(value);
  return once > 1 ? Math.max(0, 2 - once) : once;
}

/** Gelman & Rubin's ratio (1992) of one coordinate over several walks: 1 when all have seen the same. */
export function gelmanRubin(chains: readonly Chain[], coordinate: number): number {
  const means = chains.map(({ kept }) => mean(kept.map(({ unit }) => unit[coordinate])));
  const within = mean(chains.map(({ kept }, c) => mean(kept.map(({ unit }) => (unit[coordinate] - means[c]) ** 2))));
  const grand = mean(means);
  const between = means.reduce((sum, m) => sum + (m - grand) ** 2, 0) / (means.length - 1);
  return Math.sqrt(1 + between / within);
}

export function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** Members spread evenly over all walks: the fitted coefficients with their uncertainty. */
export function membersOf(chains: readonly Chain[], count: number): readonly Candidate[] {
  const all = chains.flatMap(({ kept }) => kept);
  return Array.from({ length: count }, (_, i) => all[Math.floor(((i + 0.5) * all.length) / count)]);
}
