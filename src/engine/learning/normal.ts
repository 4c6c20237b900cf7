/** Error function, absolute error below 1.5e-7 (Abramowitz & Stegun 7.1.26). */
function erf(x: number): number {
  const t = 1 / (1 + 0.3275911 * Math.abs(x));
  const y = 1 - ((((1.061405429 * t - 1.453152027) * t + 1.421413741) * t - 0.284496736) * t + 0.254829592) * t * Math.exp(-x * x);
  return x < 0 ? -y : y;
}

/** Standard normal distribution function. */
export function normalShare(z: number): number {
  return 0.5 * (1 + erf(z * Math.SQRT1_2));
}

/** Standard normal density. */
export function normalDensity(z: number): number {
  return Math.exp(-0.5 * z * z) / Math.sqrt(2 * Math.PI);
}

/** Chance that a normal variable falls between two bounds (either may be infinite), and its mean and variance if it does, in its own standard deviations. */
export function truncated(low: number, high: number): { readonly chance: number; readonly mean: number; readonly variance: number } {
  const [belowLow, belowHigh] = [low, high].map((z) => (Number.isFinite(z) ? normalShare(z) : z < 0 ? 0 : 1));
  const [atLow, atHigh] = [low, high].map((z) => (Number.isFinite(z) ? normalDensity(z) : 0));
  const chance = Math.max(1e-12, belowHigh - belowLow);
  const mean = (atLow - atHigh) / chance;
  const lowTerm = Number.isFinite(low) ? low * atLow : 0;
  const highTerm = Number.isFinite(high) ? high * atHigh : 0;
  return { chance, mean, variance: Math.max(1e-6, 1 + (lowTerm - highTerm) / chance - mean * mean) };
}
