/**
 * Seeded randomness. Nothing in the engine calls a clock or a global generator: the same seed gives the same answer.
 */

/** Uniform numbers in [0, 1) from a 32-bit seed (mulberry32, public domain, T. Ettinger 2017; passes gjrand). */
export function uniformSource(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

/** A second seed from a first one and a stream number, so that two uses of one seed do not share numbers. */
export function deriveSeed(seed: number, stream: number): number {
  return (Math.imul(seed ^ 0x9e3779b9, 0x85ebca6b) + Math.imul(stream + 1, 0xc2b2ae35)) >>> 0;
}

/**
 * Points of the additive recurrence with the generalised golden ratio (Roberts 2018, "The unreasonable effectiveness of
 * quasirandom sequences"): evenly spread over the unit cube in any dimension. The seed shifts the whole set (Cranley & Patterson 1976),
 * which keeps the mean over seeds unbiased.
 *
 * @returns `count × dimensions` numbers in [0, 1), point by point.
 */
export function evenPoints(count: number, dimensions: number, seed: number): Float64Array {
  const uniform = uniformSource(seed);
  const ratio = generalisedGoldenRatio(dimensions);
  const points = new Float64Array(count * dimensions);
  for (let d = 0; d < dimensions; d++) {
    const step = (1 / ratio ** (d + 1)) % 1;
    let at = uniform();
    for (let i = 0; i < count; i++) {
      points[i * dimensions + d] = at;
      at = (at + step) % 1;
    }
  }
  return points;
}

/** The positive root of r^(d+1) = r + 1, by fixed-point iteration. */
function generalisedGoldenRatio(dimensions: number): number {
  let ratio = 1.5;
  for (let i = 0; i < 64; i++) ratio = (1 + ratio) ** (1 / (dimensions + 1));
  return ratio;
}

/**
 * Standard normal deviate of a probability in (0, 1): P. J. Acklam's rational approximation (2003), relative error below 1.2e-9.
 * Clamped to ±6 so that a probability of exactly 0 or 1 stays finite.
 */
export function normalDeviate(probability: number): number {
  const p = Math.min(1 - 1e-9, Math.max(1e-9, probability));
  if (p < 0.02425) return tail(Math.sqrt(-2 * Math.log(p)));
  if (p > 0.97575) return -tail(Math.sqrt(-2 * Math.log(1 - p)));
  const q = p - 0.5;
  const r = q * q;
  const top =
    ((((-39.69683028665376 * r + 220.9460984245205) * r - 275.9285104469687) * r + 138.357751867269) * r - 30.66479806614716) * r +
    2.506628277459239;
  const bottom =
    ((((-54.47609879822406 * r + 161.5858368580409) * r - 155.6989798598866) * r + 66.80131188771972) * r - 13.28068155288572) * r + 1;
  return (top * q) / bottom;
}

function tail(q: number): number {
  const top =
    ((((-0.007784894002430293 * q - 0.3223964580411365) * q - 2.400758277161838) * q - 2.549732539343734) * q + 4.374664141464968) * q +
    2.938163982698783;
  const bottom = (((0.007784695709041462 * q + 0.3224671290700398) * q + 2.445134137142996) * q + 3.754408661907416) * q + 1;
  return top / bottom;
}
