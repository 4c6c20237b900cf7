import { refuse } from "../../fault.ts";
import { CUTOFFS_MM, defaultCutoffMm, SAMPLING_LENGTHS } from "./cutoff.ts";
import { type Form, withoutForm } from "./form.ts";
import { gaussianMeanLine } from "./gaussian.ts";
import { iso4287Parameters, type RoughnessParameters, roughnessParameters } from "./parameters.ts";
import { missingPoints, type Profile } from "./profile.ts";

export interface MeasureOptions {
  /** λc, mm; null: by the standard's table. */
  readonly cutoffMm: number | null;
  /** λs, mm; null: off. */
  readonly shortCutoffMm: number | null;
  readonly form: Form;
}

export interface Measured extends RoughnessParameters {
  readonly cutoffMm: number;
  readonly cutoffBy: "stated" | "table" | "length";
  readonly evaluationMm: number;
  readonly samplingLengths: number;
  readonly points: number;
  readonly missing: number;
  readonly iso4287: ReturnType<typeof iso4287Parameters>;
  /** For a picture: the profile without form, its mean line, and where the evaluation lies. */
  readonly drawn: { readonly um: Float64Array; readonly meanLine: Float64Array; readonly from: number; readonly to: number };
}

/**
 * Roughness of a profile: form out, λs if asked, the Gaussian mean line out, half a cut-off dropped at each end, whole sampling lengths, centred; then the figures of ISO 21920-2 and the older ISO 4287.
 *
 * @throws EngineFault for a profile that is too short for the cut-off, or without enough points.
 */
export function measureRoughness(profile: Profile, options: MeasureOptions): Measured {
  const missing = missingPoints(profile.um);
  if (profile.um.length - missing < 10) refuse("profile", `${profile.um.length - missing} points`, "at least 10 measured points");
  const formless = withoutForm(profile, options.form);
  const um = options.shortCutoffMm === null ? formless : gaussianMeanLine(formless, profile.spacingMm, options.shortCutoffMm);
  const { cutoffMm, by } = cutoffFor(um, profile.spacingMm, options.cutoffMm);
  const meanLine = gaussianMeanLine(um, profile.spacingMm, cutoffMm);
  const { from, to, samplingLengths } = evaluation(um.length, profile.spacingMm, cutoffMm);
  const roughness = new Float64Array(to - from);
  // A point that was not measured stays missing, whatever the filter says there.
  for (let i = 0; i < roughness.length; i++)
    roughness[i] = Number.isNaN(profile.um[from + i]) ? Number.NaN : um[from + i] - meanLine[from + i];
  const centred = aboutMean(roughness);
  return {
    ...roughnessParameters(centred, profile.spacingMm, samplingLengths),
    cutoffMm,
    cutoffBy: by,
    evaluationMm: samplingLengths * cutoffMm,
    samplingLengths,
    points: to - from,
    missing,
    iso4287: iso4287Parameters(centred, profile.spacingMm, samplingLengths),
    drawn: { um, meanLine, from, to },
  };
}

/** The table's cut-off for the roughness that it gives itself: begun at 0.8 mm and repeated until it stays; where the profile is too short for it, the longest that fits. */
function cutoffFor(um: Float64Array, spacingMm: number, stated: number | null): { cutoffMm: number; by: Measured["cutoffBy"] } {
  const lengthMm = (um.length - 1) * spacingMm;
  if (stated !== null) {
    if (!(stated > 0) || lengthMm < 2 * stated)
      refuse(
        "cutoff",
        stated,
        `more than 0, at most ${lengthMm / 2} mm: the profile holds less than one sampling length between its run-in and run-out`,
      );
    return { cutoffMm: stated, by: "stated" };
  }
  const fitting = CUTOFFS_MM.filter((cutoffMm) => lengthMm >= 2 * cutoffMm);
  if (fitting.length === 0) refuse("profile", `${lengthMm} mm`, `at least ${2 * CUTOFFS_MM[0]} mm long`);
  const longest = fitting[fitting.length - 1];
  let cutoffMm = Math.min(0.8, longest);
  for (let i = 0; i < SAMPLING_LENGTHS; i++) {
    const wanted = defaultCutoffMm(firstRaUm(um, spacingMm, cutoffMm));
    const next = Math.min(wanted, longest);
    if (next === cutoffMm) return { cutoffMm, by: wanted > longest ? "length" : "table" };
    cutoffMm = next;
  }
  return { cutoffMm, by: "table" };
}

function firstRaUm(um: Float64Array, spacingMm: number, cutoffMm: number): number {
  const line = gaussianMeanLine(um, spacingMm, cutoffMm);
  let sum = 0;
  let count = 0;
  for (let i = 0; i < um.length; i++) {
    const z = um[i] - line[i];
    if (Number.isNaN(z)) continue;
    sum += Math.abs(z);
    count++;
  }
  return count > 0 ? sum / count : 0;
}

/** As many whole sampling lengths as lie between the dropped halves, in the middle. */
function evaluation(count: number, spacingMm: number, cutoffMm: number): { from: number; to: number; samplingLengths: number } {
  const lengthMm = (count - 1) * spacingMm;
  const samplingLengths = Math.max(1, Math.floor((lengthMm - cutoffMm) / cutoffMm + 1e-9));
  const points = Math.round((samplingLengths * cutoffMm) / spacingMm);
  const from = Math.max(0, Math.floor((count - points) / 2));
  return { from, to: Math.min(count, from + points), samplingLengths };
}

function aboutMean(um: Float64Array): Float64Array {
  let sum = 0;
  let count = 0;
  for (let i = 0; i < um.length; i++) {
    if (Number.isNaN(um[i])) continue;
    sum += um[i];
    count++;
  }
  const mean = count > 0 ? sum / count : 0;
  return um.map((z) => z - mean);
}
