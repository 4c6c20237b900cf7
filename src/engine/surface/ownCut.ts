/** A surface read before and after a stage of known work: what the technician's hands did with it. */
export interface CutReading {
  readonly beforeUm: number;
  readonly afterUm: number;
  /** What the stage's abrasive leaves when it has done all it can, µm. */
  readonly leavesUm: number;
  /** How far the usual hand would have got, 0–1, in the logarithm of Ra. */
  readonly usualReach: number;
}

/** Prior and reading scatter, in the logarithm of the cut: hands differ by a third, readings by rather more. */
const PRIOR_SD = 0.3;
const READING_SD = 0.5;

/**
 * How much a technician cuts against the usual hand, with its 5–95 % range: from how far each stage got. Work relaxes the surface exponentially towards what the abrasive leaves, so a reach r
 * stands for −ln(1 − r) of work; the ratio to the usual work is one observation. Normal prior and observations in the logarithm (conjugate, closed form).
 */
export function ownCut(readings: readonly CutReading[]): { readonly value: number; readonly low: number; readonly high: number } {
  const observed = readings.flatMap(({ beforeUm, afterUm, leavesUm, usualReach }) => {
    const whole = Math.log(leavesUm / beforeUm);
    if (Math.abs(whole) < 0.1) return [];
    const reach = Math.min(0.99, Math.max(0.01, Math.log(afterUm / beforeUm) / whole));
    return [Math.log(Math.log(1 - reach) / Math.log(1 - Math.min(0.99, usualReach)))];
  });
  const precision = 1 / PRIOR_SD ** 2 + observed.length / READING_SD ** 2;
  const mean = observed.reduce((sum, log) => sum + log / READING_SD ** 2, 0) / precision;
  const half = 1.645 / Math.sqrt(precision);
  return { value: Math.exp(mean), low: Math.exp(mean - half), high: Math.exp(mean + half) };
}
