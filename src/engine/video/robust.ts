/** The middle of a list, 0 of an empty one. */
export function median(values: readonly number[]): number {
  return quantile(values, 0.5);
}

/** The value below which a share of a list lies, straight between neighbours; 0 of an empty one. */
export function quantile(values: readonly number[], share: number): number {
  if (values.length === 0) return 0;
  const sorted = [...values].sort((a, b) => a - b);
  const place = share * (sorted.length - 1);
  const low = Math.floor(place);
  const high = Math.min(low + 1, sorted.length - 1);
  return sorted[low] + (place - low) * (sorted[high] - sorted[low]);
}
