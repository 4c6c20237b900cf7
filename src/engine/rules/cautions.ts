import { type CoverId, coverOf } from "../ball/ball.ts";
import { VERY_DULL_BELOW, WET_PAPER_TO } from "../surface/pads.ts";

/** The work that a plan asks for, as far as a caution cares. */
export interface Work {
  /** Null where nobody knows it. */
  readonly cover: CoverId | null;
  readonly number: number;
  readonly polished: boolean;
  /** Whether oil is drawn out with heat. */
  readonly extracts: boolean;
  /** A reading of today's surface, µin, if one was taken. */
  readonly readingMicroinch: number | null;
}

/** A caution speaks where its condition holds; its sentence is in `words/` under `caution.<id>`. */
export interface Caution {
  readonly applies: (work: Work) => boolean;
  readonly mark: "common practice" | "published";
  readonly source: string;
}

const TRADE = "common practice of the trade";

/** The roughness above which the governing body's *manufacturing* limit lies, µin; it does not bind the owner, so it only warns. */
export const ROUGHNESS_WARNING_MICROINCH = 50;

export const CAUTIONS = {
  lookFirst: { applies: () => true, mark: "common practice", source: TRADE },
  spinner: {
    applies: () => true,
    mark: "published",
    source: `${TRADE}; 29 CFR 1910.95: action level 85 dBA; NIOSH lifting equation: 16 lb at 15 in has an index of 0.55`,
  },
  water: { applies: () => true, mark: "common practice", source: `${TRADE}; ground-fault protection trips at 6 mA (UL 943 class A)` },
  dust: { applies: () => true, mark: "published", source: "29 CFR 1910.1000: nuisance dust 15 mg/m³ total, 5 respirable" },
  floor: { applies: () => true, mark: "common practice", source: TRADE },
  polish: { applies: ({ polished }) => polished, mark: "common practice", source: TRADE },
  cleaner: {
    applies: () => true,
    mark: "published",
    source:
      "NIOSH Pocket Guide: isopropyl alcohol, flash point 53 °F, 400 ppm over a day; 29 CFR 1910.106: liquids that flash below 73 °F are among the most flammable",
  },
  heat: {
    applies: ({ extracts }) => extracts,
    mark: "common practice",
    source: "makers warn of cracks and void warranties: warn above 130 °F (54 °C), refuse above 140 °F (60 °C)",
  },
  wetPaper: {
    applies: ({ cover, number }) => (cover === null || coverOf(cover).wetPaper === "first") && number <= WET_PAPER_TO,
    mark: "common practice",
    source: TRADE,
  },
  wholeSurface: { applies: () => true, mark: "published", source: "USBC Equipment Specifications: the whole surface prepared alike" },
  roughReading: {
    applies: ({ readingMicroinch }) => readingMicroinch !== null && readingMicroinch > ROUGHNESS_WARNING_MICROINCH,
    mark: "published",
    source: "USBC Equipment Specifications: class mean Ra 50 µin at manufacture",
  },
  veryDull: {
    applies: ({ number, polished }) => number < VERY_DULL_BELOW && !polished,
    mark: "common practice",
    source: "a fresh 360 reads 40–50 µin, from memory",
  },
  ruleBook: { applies: () => true, mark: "published", source: "USBC playing rule 18: no abrasive on the surface once scoring has begun" },
} as const satisfies Record<string, Caution>;

export type CautionId = keyof typeof CAUTIONS;

export function cautionsFor(work: Work): readonly CautionId[] {
  return (Object.keys(CAUTIONS) as CautionId[]).filter((id) => CAUTIONS[id].applies(work));
}
