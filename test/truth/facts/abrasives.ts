import { assume } from "#engine/assumptions";
import { ABRASIVES } from "#engine/surface/abrasives";
import { depthRateUm } from "#engine/surface/cut";
import { fadeLaw, raAfter } from "#engine/surface/fade";
import { effectiveRaUm, parseFinish } from "#engine/surface/finish";
import { type GradingId, grade, grainRangeUm } from "#engine/surface/grading";
import { roughnessOfHistory } from "#engine/surface/history";
import type { Fact, Provenance } from "../fact.ts";

/** Median grains, number by number, copied from the standards' tables as the check: system, source, mark, number → µm. */
const TABLES: readonly (readonly [GradingId, string, Provenance, readonly (readonly [number, number])[]])[] = [
  [
    "isoP",
    "ISO 6344",
    "published",
    [
      [120, 125],
      [150, 100],
      [180, 82],
      [220, 68],
      [240, 58.5],
      [280, 52.2],
      [320, 46.2],
      [360, 40.5],
      [400, 35],
      [500, 30.2],
      [600, 25.8],
      [800, 21.8],
      [1000, 18.3],
      [1200, 15.3],
      [1500, 12.6],
      [2000, 10.3],
      [2500, 8.4],
    ],
  ],
  [
    "cami",
    "ANSI B74.18 (CAMI)",
    "published",
    [
      [120, 115],
      [180, 82],
      [220, 68],
      [240, 53],
      [320, 36],
      [360, 28],
      [400, 23],
      [500, 20],
      [600, 16],
      [800, 12.6],
      [1000, 10.3],
    ],
  ],
  [
    "jis",
    "JIS R 6001:1987",
    "published",
    [
      [240, 57],
      [280, 48],
      [320, 40],
      [360, 35],
      [400, 30],
      [500, 25],
      [600, 20],
      [800, 14],
      [1000, 11.5],
      [1200, 9.5],
      [1500, 8],
      [2000, 6.7],
      [2500, 5.5],
      [3000, 4],
      [4000, 3],
      [6000, 2],
      [8000, 1.2],
    ],
  ],
  [
    "fepaF",
    "FEPA F",
    "memory",
    [
      [230, 53],
      [240, 44.5],
      [280, 36.5],
      [320, 29.2],
      [360, 22.8],
      [400, 17.3],
      [500, 12.8],
      [600, 9.3],
      [800, 6.5],
      [1000, 4.5],
      [1200, 3],
    ],
  ],
];

/** The pad number whose fresh surface has a given effective roughness, by bisection in the number. */
function numberOf(raUm: number): number {
  let [low, high] = [360, 5000];
  for (let i = 0; i < 60; i++) {
    const middle = Math.sqrt(low * high);
    if (effectiveRaUm({ number: middle, polished: false }) > raUm) low = middle;
    else high = middle;
  }
  return low;
}

/** Archard and Preston through the cut: constants set so that the textbook's figures come out. */
function preston(k: number, newtons: number, metresPerSecond: number, areaM2: number, seconds: number): number {
  const radius = 0.1;
  const sphere = 4 * Math.PI * radius ** 2;
  const setting = {
    grainUm: 10,
    force: "medium",
    by: "hand",
    spinnerRpm: 0,
    diameterIn: (2 * radius) / 0.0254,
    hardnessD: 75,
    ownCut: 1,
  } as const;
  const rate = depthRateUm(setting, assume({ "cut.preston": k, "cut.handSpeed": metresPerSecond }));
  return ((rate * newtons) / 20) * (sphere / areaM2) * seconds;
}

export const ABRASIVE_FACTS: readonly Fact[] = [
  ...TABLES.flatMap(([system, source, provenance, rows]) =>
    rows.map(
      ([number, um]): Fact => ({
        topic: "abrasives",
        says: `${source} ${number}: median grain`,
        source,
        provenance,
        unit: "µm",
        known: um,
        within: 0,
        predict: () => grade(system, number)?.grainUm ?? Number.NaN,
      }),
    ),
  ),
  {
    topic: "abrasives",
    says: "a bare 1000 may be as coarse as",
    source: "ISO 6344",
    provenance: "published",
    unit: "µm",
    known: 18.3,
    within: 0,
    predict: () => grainRangeUm(1000)?.high ?? Number.NaN,
  },
  {
    topic: "abrasives",
    says: "Preston: 1e-12 1/Pa, 10 kPa, 1 m/s in a minute",
    source: "Preston, J. Soc. Glass Technol. 11 (1927) 214, worked example",
    provenance: "computed",
    unit: "µm",
    known: 0.6,
    within: 1e-9,
    predict: () => preston(1e-12, 10, 1, 1e-3, 60),
  },
  {
    topic: "finish in use",
    says: "a 500 pad by hand on a ball of about 3000 leaves about",
    source: "pro-shop measurement, second-hand: 1651",
    provenance: "published",
    unit: "pad number",
    known: 1651,
    within: 120,
    predict: () => {
      const ra = effectiveRaUm(parseFinish("3000"));
      return numberOf(
        roughnessOfHistory([{ abrasive: ABRASIVES["pad-500"], by: "hand", usesBefore: 0, who: "", on: "" }], {
          value: ra,
          low: ra,
          high: ra,
        }).value,
      );
    },
  },
  {
    topic: "finish in use",
    says: "1000 on a reactive cover after 60 games reads like",
    source: "pro-shop wear study, second-hand: 4000–5000",
    provenance: "published",
    unit: "pad number",
    known: [4000, 5000],
    within: 0,
    predict: () => numberOf(raAfter(fadeLaw("hybrid", assume()), effectiveRaUm(parseFinish("1000")), 60)),
  },
];
