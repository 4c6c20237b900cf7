import type { AssumptionId } from "../assumptions.ts";
import type { Finish } from "../surface/finish.ts";

/** Rules of thumb that speak of some covers only; the rules themselves stand in `rules/rulesOfThumb.ts`. */
export type CoverRule =
  | "urethaneRange"
  | "solidRange"
  | "hybridRange"
  | "pearlRange"
  | "weakHookDull"
  | "strongHookSmooth"
  | "burnSmooth"
  | "transitionHybrid"
  | "spareSmooth"
  | "exitBoard";

type AssumptionOf<Law extends string> = Extract<AssumptionId, `${Law}.${string}`>;

/** The assumptions that the laws read for a cover. A cover that is like another names that one's; of one that is not, its own stand in the registry of assumptions. */
export interface CoverLaws {
  readonly dryFriction: AssumptionOf<"friction.dry">;
  readonly filmReach: AssumptionOf<"filmReach">;
  readonly carriedOil: Exclude<AssumptionOf<"carriedOil">, "carriedOil.share" | "carriedOil.reach">;
  /** Of the oil that it takes up, what it lays down again. */
  readonly laidDown: AssumptionOf<"wear.laidDown">;
  readonly fadeLevel: AssumptionOf<"fade.level">;
  readonly fadeGames: AssumptionOf<"fade.games">;
}

/** All that the program knows of a cover. Common practice throughout, no source; the laws' numbers have theirs in the registry of assumptions. */
export interface Cover {
  /** Reactive resin: it takes oil up, which is drawn out again, and is resurfaced by its games. */
  readonly reactive: boolean;
  /** Whether a ball that is to strike may have it. */
  readonly strikes: boolean;
  readonly laws: CoverLaws;
  /** Finishes of the usual range, from dull to smooth: the candidates where none are named. */
  readonly usual: readonly Finish[];
  /** A final finish below this number is never put on; null where there is no such rule. */
  readonly neverBelow: number | null;
  /** Where a deeply worn track or a proud plug is cut back to. */
  readonly deepCutTo: number;
  /** `first`: it cuts well, and its dull texture lasts; `stands`; `deepOnly`: it eats the cover, and is kept for plug work and deep resurfacing. */
  readonly wetPaper: "first" | "stands" | "deepOnly";
  /** Whether it may be opened with a pad before oil is drawn out. */
  readonly opensForOil: boolean;
  /** Shore D where nobody measured. */
  readonly hardnessD: number;
  /** Differential of the cores it is usually sold over, least and most, in. */
  readonly differentialIn: readonly [least: number, most: number];
  readonly rules: readonly CoverRule[];
}

const plain = (...numbers: number[]): Finish[] => numbers.map((number) => ({ number, polished: false }));
const polished = (number: number): Finish => ({ number, polished: true });

/** What resins have in common. */
const RESIN = {
  reactive: true,
  strikes: true,
  neverBelow: 500,
  deepCutTo: 500,
  wetPaper: "deepOnly",
  opensForOil: true,
  differentialIn: [0.03, 0.055],
} as const;
const RESIN_RULES = ["weakHookDull", "strongHookSmooth", "burnSmooth", "exitBoard"] as const;
const RESIN_LAWS = { laidDown: "wear.laidDown.reactive", fadeLevel: "fade.level.reactive", fadeGames: "fade.games.reactive" } as const;

/** A new cover is one record here, its words, and a number for each law in which it is like no other. */
export const COVERS = {
  polyester: {
    reactive: false,
    strikes: false,
    laws: {
      dryFriction: "friction.dry.polyester",
      filmReach: "filmReach.polyester",
      carriedOil: "carriedOil.polyester",
      laidDown: "wear.laidDown.polyester",
      fadeLevel: "fade.level.polyester",
      fadeGames: "fade.games.polyester",
    },
    usual: [...plain(1000, 2000, 3000, 4000), polished(4000)],
    neverBelow: null,
    deepCutTo: 500,
    wetPaper: "stands",
    opensForOil: false,
    hardnessD: 82,
    differentialIn: [0.01, 0.01],
    rules: ["spareSmooth"],
  },
  urethane: {
    reactive: false,
    strikes: true,
    laws: {
      dryFriction: "friction.dry.urethane",
      filmReach: "filmReach.urethane",
      carriedOil: "carriedOil.urethane",
      laidDown: "wear.laidDown.urethane",
      fadeLevel: "fade.level.urethane",
      fadeGames: "fade.games.urethane",
    },
    usual: plain(360, 500, 800, 1000),
    neverBelow: null,
    deepCutTo: 360,
    wetPaper: "first",
    opensForOil: true,
    // Overlaps both ways.
    hardnessD: 78,
    differentialIn: [0.03, 0.055],
    rules: ["urethaneRange"],
  },
  solid: {
    ...RESIN,
    laws: { ...RESIN_LAWS, dryFriction: "friction.dry.solid", filmReach: "filmReach.solid", carriedOil: "carriedOil.solid" },
    usual: [...plain(500, 1000, 2000, 3000, 4000), polished(4000)],
    hardnessD: 74,
    rules: [...RESIN_RULES, "solidRange"],
  },
  hybrid: {
    ...RESIN,
    laws: { ...RESIN_LAWS, dryFriction: "friction.dry.hybrid", filmReach: "filmReach.hybrid", carriedOil: "carriedOil.hybrid" },
    usual: [...plain(500, 1000, 2000, 3000, 4000), polished(2000), polished(4000)],
    hardnessD: 74,
    rules: [...RESIN_RULES, "hybridRange", "transitionHybrid"],
  },
  pearl: {
    ...RESIN,
    laws: { ...RESIN_LAWS, dryFriction: "friction.dry.pearl", filmReach: "filmReach.pearl", carriedOil: "carriedOil.pearl" },
    usual: [...plain(2000, 3000, 4000), polished(2000), polished(4000)],
    hardnessD: 75,
    rules: [...RESIN_RULES, "pearlRange"],
  },
} as const satisfies Record<string, Cover>;

/** What a cover that nobody knows is computed about: in the middle of what balls are made of today. */
export const MIDDLE_COVER: keyof typeof COVERS = "hybrid";
