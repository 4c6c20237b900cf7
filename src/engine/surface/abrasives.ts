import type { CoverId } from "../ball/ball.ts";
import { type Grade, type GradingId, grade } from "./grading.ts";

/** What a shop works a surface with. Wet paper is for wet use only; foam-backed pads may be used dry at the lane. */
export const ABRASIVE_KINDS = ["foamPad", "wetPaper", "wovenPad", "cuttingPolish", "slipPolish", "compound"] as const;
export type AbrasiveKind = (typeof ABRASIVE_KINDS)[number];

export interface Abrasive {
  readonly kind: AbrasiveKind;
  /** Null for polishes and compounds that state no grade. */
  readonly grade: Grade | null;
  /** Grain, µm; for a polish the abrasive in it, 0 for a slip agent. */
  readonly grainUm: number;
  readonly dryAllowed: boolean;
  readonly covers: readonly CoverId[];
  /** Balls (six sides) before it cuts like the next finer one. */
  readonly usesBeforeWorn: number;
  readonly mark: "published" | "memory" | "common practice";
  readonly source: string;
}

const ALL: readonly CoverId[] = ["polyester", "urethane", "solid", "hybrid", "pearl"];
const TRADE = "uses and covers: common practice";

/** Foam-backed pads follow a system that no maker was read to state; taken as the P system until a pad says otherwise. */
const PAD_SYSTEM: GradingId = "isoP";
/** The P system has no 4000; between its remembered 3000 and 5000. */
const PAD_4000_UM = 5.7;

function pad(number: number, usesBeforeWorn: number): Abrasive {
  const known = grade(PAD_SYSTEM, number);
  return {
    kind: "foamPad",
    grade: known ?? { system: PAD_SYSTEM, number, grainUm: PAD_4000_UM, mark: "memory" },
    grainUm: known?.grainUm ?? PAD_4000_UM,
    dryAllowed: true,
    covers: ALL,
    usesBeforeWorn,
    mark: "memory",
    source: `system not stated by any maker read; ${TRADE}`,
  };
}

/** On resin the paper is kept for plug work and deep resurfacing; `stages` knows that, the registry only lists what it can be used on. */
function paper(number: number): Abrasive {
  const known = grade("isoP", number);
  if (known === null) throw new RangeError(`no P${number} in ISO 6344's table`);
  return {
    kind: "wetPaper",
    grade: known,
    grainUm: known.grainUm,
    dryAllowed: false,
    covers: ALL,
    usesBeforeWorn: 2,
    mark: known.mark === "published" ? "published" : "memory",
    source: `grain: ISO 6344; ${TRADE}`,
  };
}

/** A shop adds its own; these are the kinds that the trade has. Names are plain descriptions. */
export const ABRASIVES = {
  "pad-360": pad(360, 20),
  "pad-500": pad(500, 20),
  "pad-800": pad(800, 20),
  "pad-1000": pad(1000, 20),
  "pad-1500": pad(1500, 25),
  "pad-2000": pad(2000, 25),
  "pad-3000": pad(3000, 30),
  "pad-4000": pad(4000, 30),
  "pad-5000": pad(5000, 30),
  "paper-P240": paper(240),
  "paper-P320": paper(320),
  "paper-P400": paper(400),
  "paper-P600": paper(600),
  "paper-P800": paper(800),
  "paper-P1000": paper(1000),
  "paper-P1500": paper(1500),
  "paper-P2000": paper(2000),
  "woven-coarse": {
    kind: "wovenPad",
    grade: null,
    grainUm: 40,
    dryAllowed: true,
    covers: ALL,
    usesBeforeWorn: 10,
    mark: "memory",
    source: `about like P360; ${TRADE}`,
  },
  "woven-fine": {
    kind: "wovenPad",
    grade: null,
    grainUm: 15,
    dryAllowed: true,
    covers: ALL,
    usesBeforeWorn: 15,
    mark: "memory",
    source: `about like P1200; ${TRADE}`,
  },
  compound: {
    kind: "compound",
    grade: null,
    grainUm: 10,
    dryAllowed: false,
    covers: ALL,
    usesBeforeWorn: 40,
    mark: "memory",
    source: `about like P2000, from memory; ${TRADE}`,
  },
  "cutting-polish": {
    kind: "cuttingPolish",
    grade: null,
    grainUm: 3,
    dryAllowed: false,
    covers: ALL,
    usesBeforeWorn: 40,
    mark: "memory",
    source: `finest grains, from memory; ${TRADE}`,
  },
  "slip-polish": {
    kind: "slipPolish",
    grade: null,
    grainUm: 0,
    dryAllowed: false,
    covers: ALL,
    usesBeforeWorn: 40,
    mark: "common practice",
    source: TRADE,
  },
} as const satisfies Record<string, Abrasive>;

export type AbrasiveId = keyof typeof ABRASIVES;
export const ABRASIVE_IDS = Object.keys(ABRASIVES) as readonly AbrasiveId[];

/** Foam pads from coarse to fine: the ladder that a finish is built on. */
export const PAD_NUMBERS = [360, 500, 800, 1000, 1500, 2000, 3000, 4000, 5000] as const;
