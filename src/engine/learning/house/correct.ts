import { type Assumed, assume } from "../../assumptions.ts";
import type { Bowler } from "../../delivery/bowler.ts";
import { EngineFault, type Problem } from "../../fault.ts";
import { deriveSeed } from "../../random.ts";
import { cholesky, meanAndCovariance } from "../matrix.ts";
import { sample } from "../sampler.ts";
import { type Emulator, emulate, emulated, type Region } from "./emulator.ts";
import { shotLikelihood } from "./likelihood.ts";
import type { Eye, SituationSeen } from "./notes.ts";
import { distancesOf } from "./observe.ts";
import {
  DELIVERY_IDS,
  HOUSE_IDS,
  houseRange,
  logPrior,
  type MeanKnown,
  PARAMETER_IDS,
  type ParameterId,
  type Place,
  usualPlace,
  valuesAt,
} from "./parameters.ts";

/** Everything a house is learned from. */
export interface CorrectQuestion {
  readonly seed: number;
  readonly bowler: Bowler;
  readonly known: MeanKnown;
  readonly situations: readonly SituationSeen[];
  readonly eye: Eye;
  readonly assumptions: Readonly<Partial<Assumed>>;
}

/** One parameter after the shots. */
export interface Learned {
  readonly id: ParameterId;
  /** Mean, and the ends of the 90 % interval. */
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly before: { readonly value: number; readonly low: number; readonly high: number };
  /** Standard deviation over that of the prior: 1 is nothing learned. */
  readonly left: number;
}

/** What the shots tell of a house. */
export interface Correction {
  readonly shots: number;
  readonly parameters: readonly Learned[];
  /** Pairs that the shots tell together better than apart. */
  readonly tied: readonly { readonly pair: readonly [ParameterId, ParameterId]; readonly correlation: number }[];
  /** Parameters of which the shots say next to nothing. */
  readonly untold: readonly ParameterId[];
  /** Draws of the parameters, in the order of `PARAMETER_IDS`: what a plan takes in place of the ranges. */
  readonly draws: readonly (readonly number[])[];
  readonly worstRhat: number;
}

/** Rounds of fitting the emulators, over the prior, then where the shots point, and how far each chain goes in them. */
const STEPS = [2000, 2000, 10_000];
const DRAWS_OUT = 200;
/** Told to less than so much of the prior's width nothing was learned. */
const UNTOLD_FROM = 0.9;
const TIED_FROM = 0.5;
/** The region of a later round is wider than the posterior of the one before by so much. */
const WIDER = 1.6;

/** Chains that agree worse than this have not settled (Gelman and Rubin 1992: "near 1, say below 1.2"; from memory). */
const SETTLED = 1.2;

/** Whether the chains agree so well that what they say may be used. */
export function hasSettled({ worstRhat }: Pick<Correction, "worstRhat">): boolean {
  return worstRhat <= SETTLED;
}

/** A correction with what it was computed with, for asking on. */
export interface CorrectionRun {
  readonly correction: Correction;
  readonly emulators: readonly Emulator[];
  readonly places: readonly Place[];
}

/** The house's parameters and the bowler's mean delivery, from shots that were seen. @throws EngineFault where there is no shot */
export function correct(question: CorrectQuestion): CorrectionRun {
  checkQuestion(question);
  let region = priorRegion();
  let run: { emulators: readonly Emulator[]; draws: readonly Place[]; worstRhat: number } | null = null;
  for (const [round, steps] of STEPS.entries()) {
    run = learnOver(question, region, steps, deriveSeed(question.seed, 30 + round));
    region = regionOf(run.draws);
  }
  if (run === null) throw new EngineFault([]);
  return { correction: told(question, run.draws, run.worstRhat), emulators: run.emulators, places: run.draws };
}

function learnOver(question: CorrectQuestion, region: Region, steps: number, seed: number) {
  const { bowler, known, assumptions, situations, eye } = question;
  const about = { bowler, known, centre: assume(assumptions), usual: usualPlace() };
  const emulators = situations.map((situation, i) => emulate(situation, about, region, deriveSeed(seed, i)));
  const likelihoods = situations.map((situation, i) =>
    situation.shots.map((shot) => shotLikelihood(shot, emulators[i], distancesOf(situation), eye)),
  );
  const logDensity = (place: Place): number => {
    let sum = logPrior(place);
    if (sum === Number.NEGATIVE_INFINITY) return sum;
    emulators.forEach((emulator, i) => {
      const shown = emulated(emulator, place);
      for (const likelihood of likelihoods[i]) sum += likelihood(shown);
    });
    return sum;
  };
  const start = region.middle.map((value, i) => (i < HOUSE_IDS.length ? Math.min(0.95, Math.max(-0.95, value)) : value));
  const firstSd = region.lower.map((row, i) => Math.min(0.3, 0.5 * Math.hypot(...row.slice(0, i + 1))));
  const { draws, worstRhat } = sample(logDensity, start, firstSd, steps, deriveSeed(seed, 1000));
  return { emulators, draws, worstRhat };
}

/** The prior: even over −1 … 1 has the standard deviation 1/√3. */
function priorRegion(): Region {
  const sds = PARAMETER_IDS.map((_, i) => (i < HOUSE_IDS.length ? 1 / Math.sqrt(3) : 1));
  return { middle: PARAMETER_IDS.map(() => 0), lower: sds.map((sd, i) => sds.map((_, k) => (i === k ? sd : 0))) };
}

function regionOf(draws: readonly Place[]): Region {
  const { mean, covariance } = meanAndCovariance(draws);
  const prior = priorRegion();
  const wide = covariance.map((row, i) => row.map((value, k) => WIDER ** 2 * value + (i === k ? 0.01 * prior.lower[i][i] ** 2 : 0)));
  return { middle: mean, lower: cholesky(wide) };
}

function told({ bowler, known, situations }: CorrectQuestion, places: readonly Place[], worstRhat: number): Correction {
  const rows = places.map((place) => {
    const values = valuesAt(place, bowler, known);
    return PARAMETER_IDS.map((id) => values[id]);
  });
  const { covariance } = meanAndCovariance(rows);
  const sds = covariance.map((row, i) => Math.sqrt(row[i]));
  const parameters = PARAMETER_IDS.map((id, i): Learned => {
    const before = priorOf(id, bowler, known);
    const sorted = rows.map((row) => row[i]).sort((a, b) => a - b);
    const at = (share: number) => sorted[Math.round(share * (sorted.length - 1))];
    const value = sorted.reduce((sum, one) => sum + one, 0) / sorted.length;
    return { id, value, low: at(0.05), high: at(0.95), before, left: sds[i] / before.sd };
  });
  const tied = PARAMETER_IDS.flatMap((a, i) =>
    PARAMETER_IDS.slice(i + 1).flatMap((b, k) => {
      const j = i + 1 + k;
      const correlation = covariance[i][j] / (sds[i] * sds[j]);
      return Math.abs(correlation) >= TIED_FROM ? [{ pair: [a, b] as const, correlation }] : [];
    }),
  );
  const every = Math.max(1, Math.floor(rows.length / DRAWS_OUT));
  return {
    shots: situations.reduce((sum, { shots }) => sum + shots.length, 0),
    parameters,
    tied: tied.toSorted((a, b) => Math.abs(b.correlation) - Math.abs(a.correlation)),
    untold: parameters.filter(({ left }) => left >= UNTOLD_FROM).map(({ id }) => id),
    draws: rows.filter((_, i) => i % every === 0).slice(0, DRAWS_OUT),
    worstRhat,
  };
}

function priorOf(id: ParameterId, bowler: Bowler, known: MeanKnown): { value: number; low: number; high: number; sd: number } {
  if (isDelivery(id))
    return { value: bowler[id], low: bowler[id] - 1.645 * known[id], high: bowler[id] + 1.645 * known[id], sd: known[id] };
  const { value, low, high } = houseRange(id);
  return { value, low, high, sd: (high - low) / Math.sqrt(12) };
}

function isDelivery(id: ParameterId): id is (typeof DELIVERY_IDS)[number] {
  return DELIVERY_IDS.some((one) => one === id);
}

function checkQuestion({ situations, known, eye }: CorrectQuestion): void {
  const problems: Problem[] = [];
  if (situations.every(({ shots }) => shots.length === 0))
    problems.push({ path: "shots", value: "none", allowed: "at least one shot that was seen" });
  for (const [name, sd] of [...Object.entries(known), ...Object.entries(eye)])
    if (!(sd > 0 && Number.isFinite(sd))) problems.push({ path: name, value: sd, allowed: "a standard deviation above 0" });
  if (problems.length > 0) throw new EngineFault(problems);
}
