/** How many worlds count: 1/Σw² of the shares. */
export function effectiveNumber(weights: readonly number[]): number {
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const squares = weights.reduce((sum, weight) => sum + weight * weight, 0);
  return squares > 0 ? (total * total) / squares : 0;
}

/** The same of rows of which several may stand in one world. */
export function effectiveWorlds(rows: readonly { readonly world: number; readonly weight: number }[]): number {
  const shares = new Map<number, number>();
  for (const { world, weight } of rows) shares.set(world, (shares.get(world) ?? 0) + weight);
  return effectiveNumber([...shares.values()]);
}
