/** Cut-offs by roughness: the standard's default table for non-periodic profiles (ISO 21920-3 / ISO 4288), Ra in µm, lengths in mm. Published. */
const DEFAULTS: readonly { readonly toRaUm: number; readonly cutoffMm: number }[] = [
  { toRaUm: 0.02, cutoffMm: 0.08 },
  { toRaUm: 0.1, cutoffMm: 0.25 },
  { toRaUm: 2, cutoffMm: 0.8 },
  { toRaUm: 10, cutoffMm: 2.5 },
  { toRaUm: Number.POSITIVE_INFINITY, cutoffMm: 8 },
];

/** Sampling lengths of an evaluation length, by the same standard. */
export const SAMPLING_LENGTHS = 5;

export function defaultCutoffMm(raUm: number): number {
  const row = DEFAULTS.find(({ toRaUm }) => raUm <= toRaUm) ?? DEFAULTS[DEFAULTS.length - 1];
  return row.cutoffMm;
}

export const CUTOFFS_MM: readonly number[] = DEFAULTS.map(({ cutoffMm }) => cutoffMm);
