/**
 * A measured profile: heights at even spacing. A point that was not measured is NaN in `um`, and only there: it never leaves as a figure.
 */
export interface Profile {
  /** Heights, µm. */
  readonly um: Float64Array;
  /** Distance between neighbours, mm. */
  readonly spacingMm: number;
}

export function missingPoints(um: Float64Array): number {
  let missing = 0;
  for (let i = 0; i < um.length; i++) if (Number.isNaN(um[i])) missing++;
  return missing;
}
