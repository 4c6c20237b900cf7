import { type MaterialRatio, materialRatio } from "./materialRatio.ts";

/** Amplitudes over the evaluation length, µm; null where a figure cannot be had. */
export interface Amplitudes {
  readonly raUm: number;
  readonly rqUm: number;
  readonly rzUm: number;
  readonly rtUm: number;
  readonly rpUm: number;
  readonly rvUm: number;
  /** Null for a profile without height. */
  readonly rsk: number | null;
  readonly rku: number | null;
}

/** ISO 21920-2: Ra, Rq, Rsk, Rku and Rt over the whole evaluation length, Rz, Rp and Rv as means over its section lengths. */
export interface RoughnessParameters extends Amplitudes, Nullable<MaterialRatio> {
  readonly rsmMm: number | null;
  readonly rdq: number | null;
}

type Nullable<T> = { readonly [Key in keyof T]: T[Key] | null };

/**
 * @param um the roughness profile over the evaluation length, NaN where a point is missing.
 * @param sections how many section lengths it holds.
 */
export function roughnessParameters(um: Float64Array, spacingMm: number, sections: number): RoughnessParameters {
  const there = um.filter((z) => !Number.isNaN(z));
  const { rqUm, raUm, rsk, rku, low, high } = overall(there);
  const extremes = sectionsOf(um, sections)
    .map(extremesOf)
    .filter((pair) => pair !== null);
  const meanOf = (value: (pair: { low: number; high: number }) => number) =>
    extremes.length > 0 ? extremes.reduce((sum, pair) => sum + value(pair), 0) / extremes.length : 0;
  const rzUm = meanOf(({ low: valley, high: peak }) => peak - valley);
  const ratio = there.length > 1 && rqUm > 0 ? materialRatio(there) : { rkUm: null, rpkUm: null, rvkUm: null, mr1Pct: null, mr2Pct: null };
  return {
    raUm,
    rqUm,
    rzUm,
    rtUm: high - low,
    rpUm: meanOf(({ high: peak }) => Math.max(0, peak)),
    rvUm: meanOf(({ low: valley }) => Math.max(0, -valley)),
    rsk,
    rku,
    rsmMm: meanSpacingMm(um, spacingMm, 0.1 * rzUm),
    rdq: rootMeanSlope(um, spacingMm),
    ...ratio,
  };
}

/** The older set, ISO 4287: every amplitude per sampling length, then the mean over them; Rt over all. */
export function iso4287Parameters(
  um: Float64Array,
  spacingMm: number,
  sections: number,
): Amplitudes & { readonly rsmMm: number | null; readonly rdq: number | null } {
  const whole = roughnessParameters(um, spacingMm, sections);
  const parts = sectionsOf(um, sections)
    .map((part) => overall(part.filter((z) => !Number.isNaN(z))))
    .filter(({ count }) => count > 0);
  const mean = (value: (part: (typeof parts)[number]) => number | null) => {
    const known = parts.map(value).filter((one) => one !== null);
    return known.length > 0 ? known.reduce((sum, one) => sum + one, 0) / known.length : null;
  };
  return {
    raUm: mean(({ raUm }) => raUm) ?? 0,
    rqUm: mean(({ rqUm }) => rqUm) ?? 0,
    rzUm: whole.rzUm,
    rtUm: whole.rtUm,
    rpUm: whole.rpUm,
    rvUm: whole.rvUm,
    rsk: mean(({ rsk }) => rsk),
    rku: mean(({ rku }) => rku),
    rsmMm: whole.rsmMm,
    rdq: whole.rdq,
  };
}

function overall(there: Float64Array) {
  const count = there.length;
  let [sumAbs, sum2, sum3, sum4] = [0, 0, 0, 0];
  let low = count > 0 ? there[0] : 0;
  let high = low;
  for (let i = 0; i < count; i++) {
    const z = there[i];
    const z2 = z * z;
    sumAbs += Math.abs(z);
    sum2 += z2;
    sum3 += z2 * z;
    sum4 += z2 * z2;
    if (z < low) low = z;
    if (z > high) high = z;
  }
  const rqUm = count > 0 ? Math.sqrt(sum2 / count) : 0;
  const flat = rqUm < 1e-12;
  return {
    count,
    raUm: count > 0 ? sumAbs / count : 0,
    rqUm,
    rsk: flat ? null : sum3 / count / rqUm ** 3,
    rku: flat ? null : sum4 / count / rqUm ** 4,
    low,
    high,
  };
}

function sectionsOf(um: Float64Array, sections: number): Float64Array[] {
  return Array.from({ length: sections }, (_, k) =>
    um.subarray(Math.round((k * um.length) / sections), Math.round(((k + 1) * um.length) / sections)),
  );
}

function extremesOf(part: Float64Array): { low: number; high: number } | null {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < part.length; i++) {
    const z = part[i];
    if (z < low) low = z;
    if (z > high) high = z;
  }
  return low <= high ? { low, high } : null;
}

/**
 * Mean width of profile elements: a peak and the valley beside it, both higher than the discrimination (10 % of Rz), counted between upward crossings of the mean line that belong to such pairs.
 * Null with fewer than two such crossings.
 */
function meanSpacingMm(um: Float64Array, spacingMm: number, discriminationUm: number): number | null {
  let state: "unknown" | "valley" | "peak" = "unknown";
  let crossing = Number.NaN;
  let first = Number.NaN;
  let last = Number.NaN;
  let count = 0;
  let before = Number.NaN;
  for (let i = 0; i < um.length; i++) {
    const z = um[i];
    if (Number.isNaN(z)) continue;
    if (before < 0 && z >= 0) crossing = i - z / (z - before);
    if (z < -discriminationUm) state = "valley";
    else if (z > discriminationUm) {
      if (state === "valley" && !Number.isNaN(crossing)) {
        if (count === 0) first = crossing;
        last = crossing;
        count++;
      }
      state = "peak";
    }
    before = z;
  }
  return count > 1 ? ((last - first) * spacingMm) / (count - 1) : null;
}

/** Root mean square slope by the seven-point formula of both standards; dimensionless (µm over µm). Null with fewer than seven points in a row. */
function rootMeanSlope(um: Float64Array, spacingMm: number): number | null {
  let sum = 0;
  let count = 0;
  for (let i = 3; i < um.length - 3; i++) {
    const slope = (um[i + 3] - um[i - 3] - 9 * (um[i + 2] - um[i - 2]) + 45 * (um[i + 1] - um[i - 1])) / (60 * spacingMm * 1000);
    if (Number.isNaN(slope)) continue;
    sum += slope * slope;
    count++;
  }
  return count > 0 ? Math.sqrt(sum / count) : null;
}
