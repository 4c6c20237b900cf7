import { type Assumed, assume } from "../../assumptions.ts";
import { refuse } from "../../fault.ts";
import { type CutSetting, depthRateUm, valleyDepthUm } from "../cut.ts";

/** Readings of one side, µm effective; at least one. */
export interface SideReadings {
  readonly side: string;
  readonly raUm: readonly number[];
}

export interface SideVerdict {
  readonly side: string;
  readonly mean: number;
  readonly low: number;
  readonly high: number;
  /** Against the target: within its range, or which way off. */
  readonly stands: "met" | "tooDull" | "tooSmooth";
  /** More work of the same stage that would bring it there, s; 0 where none is needed. */
  readonly moreSeconds: number;
}

export interface EvennessVerdict {
  readonly mean: number;
  /** Standard deviations in the logarithm of Ra: between sides, and of readings on one side. */
  readonly betweenSides: number;
  readonly withinSide: number;
  /** 95 % upper bound of the spread between sides, in the logarithm. */
  readonly betweenAtMost: number;
  readonly verdict: "even" | "uneven" | "cannotTell";
  readonly sides: readonly SideVerdict[];
  /** The side furthest off, if any needs work. */
  readonly backTo: string | null;
}

/** Sides that differ by less than this factor feel and look alike; common practice: half a step of the ladder. */
const ALIKE = Math.log(1.2);
/** A side meets the target within half a step of the ladder. */
const MET = Math.log(1.25);

/**
 * Do the sides agree? Variance components of the logarithms (roughness varies by factors), one-way random effects by the analysis of variance; the upper bound of the spread between sides by Satterthwaite's degrees of
 * freedom and the Wilson–Hilferty chi-square. Even if that bound is below a fifth's difference; uneven if the estimate itself is above it or one side alone stands out; else more readings are needed.
 *
 * @throws EngineFault with fewer than two sides or a side without a reading.
 */
export function evenness(sides: readonly SideReadings[], targetUm: number, bench: CutSetting, a: Assumed = assume()): EvennessVerdict {
  if (sides.length < 2 || sides.some(({ raUm }) => raUm.length === 0))
    refuse("sides", sides.length, "at least 2 sides with a reading each");
  const logs = sides.map(({ raUm }) => raUm.map(Math.log));
  const means = logs.map(mean);
  const counts = logs.map((side) => side.length);
  const total = counts.reduce((sum, count) => sum + count, 0);
  const grand = logs.flat().reduce((sum, log) => sum + log, 0) / total;
  const dfWithin = total - sides.length;
  const msWithin =
    dfWithin > 0
      ? logs.reduce((sum, side, i) => sum + side.reduce((part, log) => part + (log - means[i]) ** 2, 0), 0) / dfWithin
      : READING_VARIANCE;
  const msBetween = means.reduce((sum, m, i) => sum + counts[i] * (m - grand) ** 2, 0) / (sides.length - 1);
  const perSide = (total - counts.reduce((sum, count) => sum + count * count, 0) / total) / (sides.length - 1);
  const between = Math.max(0, (msBetween - msWithin) / perSide);
  const betweenAtMost = Math.sqrt(Math.max(0, (msBetween * (sides.length - 1)) / chiSquareLow(sides.length - 1) - msWithin) / perSide);
  const verdicts = sides.map(({ side }, i) => sideVerdict(side, means[i], Math.sqrt(msWithin / counts[i]), targetUm, bench, a));
  const worst = verdicts.reduce((most, one) =>
    Math.abs(Math.log(one.mean / targetUm)) > Math.abs(Math.log(most.mean / targetUm)) ? one : most,
  );
  return {
    mean: Math.exp(grand),
    betweenSides: Math.sqrt(between),
    withinSide: Math.sqrt(msWithin),
    betweenAtMost,
    verdict:
      betweenAtMost <= ALIKE ? "even" : Math.sqrt(between) > ALIKE || oneStandsOut(means, msWithin, counts) ? "uneven" : "cannotTell",
    sides: verdicts,
    backTo: worst.stands === "met" ? null : worst.side,
  };
}

/** Whether one side alone, its own error allowed for, is another surface than the rest. */
function oneStandsOut(means: readonly number[], variance: number, counts: readonly number[]): boolean {
  const total = means.reduce((sum, m) => sum + m, 0);
  return means.some((m, i) => Math.abs(m - (total - m) / (means.length - 1)) - 1.96 * Math.sqrt(variance / counts[i]) > ALIKE);
}

/** Where each side was read once: a reading's own scatter, 15 % (chosen). */
const READING_VARIANCE = 0.15 ** 2;

function sideVerdict(side: string, log: number, error: number, targetUm: number, bench: CutSetting, a: Assumed): SideVerdict {
  const off = log - Math.log(targetUm);
  const stands = Math.abs(off) <= MET ? "met" : off > 0 ? "tooDull" : "tooSmooth";
  return {
    side,
    mean: Math.exp(log),
    low: Math.exp(log - 1.96 * error),
    high: Math.exp(log + 1.96 * error),
    stands,
    moreSeconds: stands === "met" ? 0 : moreSeconds(Math.exp(log), targetUm, bench, a),
  };
}

/** The same pad again takes off what still stands above its own valleys; a surface duller than the pad leaves must lose the difference, a smoother one must be cut in to the pad's full depth. */
function moreSeconds(raUm: number, targetUm: number, bench: CutSetting, a: Assumed): number {
  const depth = raUm > targetUm ? valleyDepthUm(raUm - targetUm, a) : valleyDepthUm(targetUm - raUm, a);
  return Math.max(5, 5 * Math.ceil(depth / depthRateUm(bench, a) / 6 / 5));
}

/** Lower 5 % point of chi-square by Wilson and Hilferty (1931). */
function chiSquareLow(degrees: number): number {
  const third = 2 / (9 * degrees);
  return degrees * Math.max(0.02, 1 - third - 1.645 * Math.sqrt(third)) ** 3;
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
