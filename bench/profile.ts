import { evenPoints } from "#engine/random";
import { gaussianMeanLine } from "#engine/surface/roughness/gaussian";
import { median, type Row, secondsOf } from "./rows.ts";

const ROUNDS = 3;
const POINTS = 200_000;
const SPACING_MM = 0.0005;
const CUTOFF_MM = 0.8;

/** The mean line of a fine profile against a plain convolution at every point, on the same noise in the same run. */
export function profileRows(): readonly Row[] {
  const um = evenPoints(POINTS, 1, 5);
  gaussianMeanLine(um, SPACING_MM, CUTOFF_MM);
  const rounds = Array.from({ length: ROUNDS }, () => ({
    ours: secondsOf(() => gaussianMeanLine(um, SPACING_MM, CUTOFF_MM)),
    plain: secondsOf(() => plainMeanLine(um)),
  }));
  return [
    {
      what: "Gaussian mean line, profile points",
      value: `${Math.round(POINTS / median(rounds.map(({ ours }) => ours))).toLocaleString("en")} a second`,
      ratio: { rounds: rounds.map(({ ours, plain }) => plain / ours), of: "the speed of a plain convolution", better: "higher" },
    },
  ];
}

function plainMeanLine(um: Float64Array): Float64Array {
  const reach = Math.round(CUTOFF_MM / SPACING_MM);
  const alpha2 = Math.LN2 / Math.PI;
  const weights = Float64Array.from({ length: reach + 1 }, (_, i) =>
    Math.exp((-Math.PI * (i * SPACING_MM) ** 2) / (alpha2 * CUTOFF_MM ** 2)),
  );
  const line = new Float64Array(um.length);
  for (let i = 0; i < um.length; i++) {
    let sum = 0;
    let total = 0;
    for (let j = Math.max(0, i - reach); j <= Math.min(um.length - 1, i + reach); j++) {
      const weight = weights[Math.abs(i - j)];
      sum += weight * um[j];
      total += weight;
    }
    line[i] = sum / total;
  }
  return line;
}
