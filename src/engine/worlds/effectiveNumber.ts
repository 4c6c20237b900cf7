/** How many worlds count: 1/Σw² of the shares. */
export function effectiveNumber(weights: readonly number[]): number {
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const squares = weights.reduce((sum, weight) => sum + weight * weight, 0);
  return squares > 0 ? (total * total) / squares : 0;
}
