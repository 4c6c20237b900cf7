import { individualsChart } from "#engine/surface/readings/controlChart";
import { anovaStudy, type GaugeReading, type GaugeResult, rangeStudy } from "#engine/surface/readings/gauge";
import type { Fact } from "../fact.ts";

/** The worked example of the AIAG manual (Measurement Systems Analysis): three people, three trials, ten parts. The data are from memory; every published result recomputes from them. */
const AIAG: Readonly<Record<string, readonly (readonly number[])[]>> = {
  A: [
    [0.29, -0.56, 1.34, 0.47, -0.8, 0.02, 0.59, -0.31, 2.26, -1.36],
    [0.41, -0.68, 1.17, 0.5, -0.92, -0.11, 0.75, -0.2, 1.99, -1.25],
    [0.64, -0.58, 1.27, 0.64, -0.84, -0.21, 0.66, -0.17, 2.01, -1.31],
  ],
  B: [
    [0.08, -0.47, 1.19, 0.01, -0.56, -0.2, 0.47, -0.63, 1.8, -1.68],
    [0.25, -1.22, 0.94, 1.03, -1.2, 0.22, 0.55, 0.08, 2.12, -1.62],
    [0.07, -0.68, 1.34, 0.2, -1.28, 0.06, 0.83, -0.34, 2.19, -1.5],
  ],
  C: [
    [0.04, -1.38, 0.88, 0.14, -1.46, -0.29, 0.02, -0.46, 1.77, -1.49],
    [-0.11, -1.13, 1.09, 0.2, -1.07, -0.67, 0.01, -0.56, 1.45, -1.77],
    [-0.15, -0.96, 0.67, 0.11, -1.45, -0.49, 0.21, -0.49, 1.87, -2.16],
  ],
};

export const AIAG_READINGS: readonly GaugeReading[] = Object.entries(AIAG).flatMap(([person, trials]) =>
  trials.flatMap((values, trial) => values.map((value, part) => ({ part: String(part + 1), person, trial: trial + 1, value }))),
);

const AIAG_SOURCE = "AIAG Measurement Systems Analysis, worked example; data from memory, printed results";
const NIST = "NIST/SEMATECH e-Handbook of Statistical Methods 6.3.2.2";

function gauge(says: string, study: () => GaugeResult, value: (result: GaugeResult) => number, known: number, within: number): Fact {
  return { topic: "gauge study", says, source: AIAG_SOURCE, provenance: "memory", unit: "1", known, within, predict: () => value(study()) };
}

const range = () => rangeStudy(AIAG_READINGS);
const anova = () => anovaStudy(AIAG_READINGS);
const handbook = () => individualsChart([49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1]);

export const STATISTICS: readonly Fact[] = [
  gauge("range method: repeatability", range, ({ ev }) => ev, 0.201857, 2e-5),
  gauge("range method: reproducibility", range, ({ av }) => av, 0.229667, 3e-5),
  gauge("range method: both", range, ({ grr }) => grr, 0.305766, 3e-5),
  gauge("range method: parts", range, ({ pv }) => pv, 1.104596, 1e-4),
  gauge("range method: total", range, ({ tv }) => tv, 1.146135, 1e-4),
  gauge("range method: repeatability, %", range, ({ percent }) => percent.ev, 17.61, 0.01),
  gauge("range method: reproducibility, %", range, ({ percent }) => percent.av, 20.04, 0.01),
  gauge("range method: both, %", range, ({ percent }) => percent.grr, 26.68, 0.01),
  gauge("range method: parts, %", range, ({ percent }) => percent.pv, 96.38, 0.01),
  gauge("range method: kinds told apart", range, ({ distinct }) => distinct, 5, 0),
  gauge("analysis of variance: repeatability", anova, ({ ev }) => ev, 0.199933, 1e-6),
  gauge("analysis of variance: reproducibility", anova, ({ av }) => av, 0.226838, 1e-6),
  gauge("analysis of variance: both", anova, ({ grr }) => grr, 0.302372, 1e-6),
  gauge("analysis of variance: parts", anova, ({ pv }) => pv, 1.042327, 1e-6),
  gauge("analysis of variance: both, %", anova, ({ percent }) => percent.grr, 27.86, 0.01),
  gauge("analysis of variance: kinds told apart", anova, ({ distinct }) => distinct, 4, 0),
  gauge("analysis of variance: interaction F", anova, () => anovaStudy(AIAG_READINGS).interactionF ?? Number.NaN, 434 / 1000, 1e-3),
  {
    topic: "control chart",
    says: "mean of ten readings",
    source: NIST,
    provenance: "published",
    unit: "1",
    known: 50.81,
    within: 1e-9,
    predict: () => handbook().mean,
  },
  {
    topic: "control chart",
    says: "mean moving range",
    source: NIST,
    provenance: "published",
    unit: "1",
    known: 1.8778,
    within: 5e-5,
    predict: () => handbook().meanMovingRange,
  },
  {
    topic: "control chart",
    says: "upper limit",
    source: NIST,
    provenance: "published",
    unit: "1",
    known: 55.8041,
    within: 5e-5,
    predict: () => handbook().upper,
  },
  {
    topic: "control chart",
    says: "lower limit",
    source: NIST,
    provenance: "published",
    unit: "1",
    known: 45.8159,
    within: 5e-5,
    predict: () => handbook().lower,
  },
];
