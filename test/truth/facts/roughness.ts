import { evenPoints, normalDeviate } from "#engine/random";
import { defaultCutoffMm } from "#engine/surface/roughness/cutoff";
import { ALPHA, gaussianMeanLine } from "#engine/surface/roughness/gaussian";
import { measureRoughness } from "#engine/surface/roughness/measure";
import { type RoughnessParameters, roughnessParameters } from "#engine/surface/roughness/parameters";
import type { Fact } from "../fact.ts";

const SPACING_MM = 0.0005;
const ISO = "ISO 21920-2 definitions, closed form";
const FILTER = "ISO 16610-21: transmission 1 − 2^−(λc/λ)²";
const PERIOD = 400;
const PERIODS = 50;

const wave = (shape: (phase: number) => number): Float64Array =>
  Float64Array.from({ length: PERIOD * PERIODS }, (_, i) => shape(((i + 0.5) % PERIOD) / PERIOD));
const shapes = {
  sine: wave((t) => Math.sin(2 * Math.PI * t)),
  triangle: wave((t) => (t < 0.25 ? 4 * t : t < 0.75 ? 2 - 4 * t : 4 * t - 4)),
  square: wave((t) => (t < 0.5 ? 1 : -1)),
  "Gaussian noise": Float64Array.from(evenPoints(400_000, 1, 3), (p) => normalDeviate(p)),
} as const;

type Figure = keyof RoughnessParameters;

function figure(shape: keyof typeof shapes, name: Figure, known: number, within: number, unit = "A"): Fact {
  return {
    topic: "roughness",
    says: `${shape}, amplitude (or σ) 1 µm: ${name}`,
    source: ISO,
    provenance: "computed",
    unit,
    known,
    within,
    predict: () => roughnessParameters(shapes[shape], SPACING_MM, 5)[name] ?? Number.NaN,
  };
}

/** Amplitude left of a unit sine of a given wavelength over the cut-off, in the middle of the profile, away from both ends. */
function left(ratio: number): number {
  const cutoffMm = 0.8;
  const um = Float64Array.from({ length: 32_001 }, (_, i) => Math.sin((2 * Math.PI * i * SPACING_MM) / (ratio * cutoffMm)));
  const line = gaussianMeanLine(um, SPACING_MM, cutoffMm);
  let most = 0;
  for (let i = 8000; i < 24_000; i++) most = Math.max(most, Math.abs(um[i] - line[i]));
  return most;
}

/** The example of a 0.25 mm wave under a 0.8 mm cut-off, over whole periods: 3.2 mm hold 4 cut-offs and not quite 13 waves, so 20 sampling lengths are taken. */
function exampleRaUm(): number {
  const um = Float64Array.from({ length: 36_001 }, (_, i) => Math.sin((2 * Math.PI * i * SPACING_MM) / 0.25));
  const { drawn } = measureRoughness({ um, spacingMm: SPACING_MM }, { cutoffMm: 0.8, shortCutoffMm: null, form: "none" });
  const whole = Math.floor(((drawn.to - drawn.from) * SPACING_MM) / 0.25) * Math.round(0.25 / SPACING_MM);
  let sum = 0;
  for (let i = drawn.from; i < drawn.from + whole; i++) sum += Math.abs(drawn.um[i] - drawn.meanLine[i]);
  return sum / whole;
}

export const ROUGHNESS: readonly Fact[] = [
  figure("sine", "raUm", 0.6366198, 1e-5),
  figure("sine", "rqUm", 0.7071068, 1e-6),
  figure("sine", "rku", 1.5, 1e-6, "1"),
  figure("sine", "rsk", 0, 1e-9, "1"),
  figure("sine", "rzUm", 2, 1e-4),
  figure("sine", "rsmMm", PERIOD * SPACING_MM, 1e-9, "mm"),
  figure("sine", "rdq", (2 * Math.PI * 1e-3) / (PERIOD * SPACING_MM * Math.SQRT2), 5e-6, "1"),
  figure("triangle", "raUm", 0.5, 1e-5),
  figure("triangle", "rqUm", 0.5773503, 1e-5),
  figure("triangle", "rku", 1.8, 1e-4, "1"),
  figure("triangle", "rkUm", 2, 1e-2),
  figure("triangle", "rpkUm", 0, 1e-2),
  figure("triangle", "rvkUm", 0, 1e-2),
  figure("square", "raUm", 1, 1e-12),
  figure("square", "rqUm", 1, 1e-12),
  figure("square", "rku", 1, 1e-12, "1"),
  figure("Gaussian noise", "raUm", 0.7978846, 1e-4, "σ"),
  figure("Gaussian noise", "rku", 3, 1e-3, "1"),
  figure("Gaussian noise", "rkUm", 2.622003, 1e-3, "σ"),
  figure("Gaussian noise", "rpkUm", 0.936985, 1e-3, "σ"),
  figure("Gaussian noise", "rvkUm", 0.936985, 1e-3, "σ"),
  figure("Gaussian noise", "mr1Pct", 9.49287, 1e-2, "%"),
  {
    topic: "roughness",
    says: "α of the Gaussian filter",
    source: "ISO 16610-21: √(ln 2/π)",
    provenance: "computed",
    unit: "1",
    known: 0.469718639349826,
    within: 1e-15,
    predict: () => ALPHA,
  },
  ...(
    [
      [0.5, 0.9375],
      [1 / 3, 0.998046875],
      [1, 0.5],
      [2, 0.15910358],
      [5, 0.02734505],
    ] as const
  ).map(
    ([ratio, known]): Fact => ({
      topic: "roughness",
      says: `Gaussian filter, wave of ${Number(ratio.toFixed(3))} cut-offs: share left`,
      source: FILTER,
      provenance: "computed",
      unit: "1",
      known,
      within: 2e-6,
      predict: () => left(ratio),
    }),
  ),
  {
    topic: "roughness",
    says: "wave of 0.25 mm and 1 µm under 0.8 mm: Ra",
    source: FILTER,
    provenance: "computed",
    unit: "µm",
    known: 0.636093,
    within: 2e-5,
    predict: exampleRaUm,
  },
  ...(
    [
      [0.02, 0.08],
      [0.1, 0.25],
      [0.5, 0.8],
      [2, 0.8],
      [10, 2.5],
    ] as const
  ).map(
    ([ra, cutoff]): Fact => ({
      topic: "roughness",
      says: `cut-off for Ra ${ra} µm`,
      source: "ISO 21920-3 / ISO 4288, default table",
      provenance: "published",
      unit: "mm",
      known: cutoff,
      within: 0,
      predict: () => defaultCutoffMm(ra),
    }),
  ),
];
