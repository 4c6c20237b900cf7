import { refuse } from "../../fault.ts";

/** Limits of a chart of single readings of a reference piece, in order of time. */
export interface ControlLimits {
  readonly mean: number;
  readonly meanMovingRange: number;
  readonly upper: number;
  readonly lower: number;
  /** Readings outside, by their place in the series. */
  readonly outside: readonly number[];
}

/** d₂ for ranges of two (NIST/SEMATECH e-Handbook 6.3.2). */
const D2_OF_TWO = 1.128;

/** Individuals chart: mean ± 3 mean moving ranges / 1.128. @throws EngineFault with fewer than two readings */
export function individualsChart(values: readonly number[]): ControlLimits {
  if (values.length < 2) refuse("readings", values.length, "at least 2 readings");
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const ranges = values.slice(1).map((value, i) => Math.abs(value - values[i]));
  const meanMovingRange = ranges.reduce((sum, range) => sum + range, 0) / ranges.length;
  const reach = (3 * meanMovingRange) / D2_OF_TWO;
  const [upper, lower] = [mean + reach, mean - reach];
  return { mean, meanMovingRange, upper, lower, outside: values.flatMap((value, i) => (value > upper || value < lower ? [i] : [])) };
}
