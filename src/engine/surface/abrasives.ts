import { type Grade, grade } from "./grading.ts";
import { gradeOf, PADS, type Pad, type PadNumber } from "./pads.ts";

/** What a shop works a surface with. Wet paper is for wet use only; foam-backed pads may be used dry at the lane. */
export const ABRASIVE_KINDS = ["foamPad", "wetPaper", "wovenPad", "cuttingPolish", "slipPolish", "compound"] as const;
export type AbrasiveKind = (typeof ABRASIVE_KINDS)[number];

/** A polish leaves a share of what is under it; all else leaves what its number or grain does. */
export function isPolish(kind: AbrasiveKind): boolean {
  return kind === "cuttingPolish" || kind === "slipPolish";
}

export interface Abrasive {
  readonly kind: AbrasiveKind;
  /** Null for polishes and compounds that state no grade. */
  readonly grade: Grade | null;
  /** Grain, µm; for a polish the abrasive in it, 0 for a slip agent. */
  readonly grainUm: number;
  readonly dryAllowed: boolean;
  /** Balls (six sides) before it cuts like the next finer one. */
  readonly usesBeforeWorn: number;
  readonly mark: "published" | "memory" | "common practice";
  readonly source: string;
}

const TRADE = "uses: common practice";

function padOf(pad: Pad): Abrasive {
  const grade = gradeOf(pad);
  const { usesBeforeWorn, dryAllowed, source } = pad;
  return { kind: "foamPad", grade, grainUm: grade.grainUm, dryAllowed, usesBeforeWorn, mark: "memory", source };
}

/** Papers by their P numbers. */
const PAPER_NUMBERS = [240, 320, 400, 600, 800, 1000, 1500, 2000] as const;
type PaperNumber = (typeof PAPER_NUMBERS)[number];

/** On resin the paper is kept for plug work and deep resurfacing; the covers' records know that, this one only what it is. */
function paperOf(number: PaperNumber): Abrasive {
  const known = grade("isoP", number);
  if (known === null) throw new RangeError(`no P${number} in ISO 6344's table`);
  return {
    kind: "wetPaper",
    grade: known,
    grainUm: known.grainUm,
    dryAllowed: false,
    usesBeforeWorn: 2,
    mark: known.mark === "published" ? "published" : "memory",
    source: `grain: ISO 6344; ${TRADE}`,
  };
}

/** The abrasives that are named by a number. */
export type NumberedId = `pad-${PadNumber}` | `paper-P${PaperNumber}`;

const NUMBERED = Object.fromEntries([
  ...PADS.map((pad) => [`pad-${pad.number}`, padOf(pad)]),
  ...PAPER_NUMBERS.map((number) => [`paper-P${number}`, paperOf(number)]),
]) as Readonly<Record<NumberedId, Abrasive>>;

/** A shop adds its own; these are the kinds that the trade has. Names are plain descriptions. */
export const ABRASIVES = {
  ...NUMBERED,
  "woven-coarse": {
    kind: "wovenPad",
    grade: null,
    grainUm: 40,
    dryAllowed: true,
    usesBeforeWorn: 10,
    mark: "memory",
    source: `about like P360; ${TRADE}`,
  },
  "woven-fine": {
    kind: "wovenPad",
    grade: null,
    grainUm: 15,
    dryAllowed: true,
    usesBeforeWorn: 15,
    mark: "memory",
    source: `about like P1200; ${TRADE}`,
  },
  compound: {
    kind: "compound",
    grade: null,
    grainUm: 10,
    dryAllowed: false,
    usesBeforeWorn: 40,
    mark: "memory",
    source: `about like P2000, from memory; ${TRADE}`,
  },
  "cutting-polish": {
    kind: "cuttingPolish",
    grade: null,
    grainUm: 3,
    dryAllowed: false,
    usesBeforeWorn: 40,
    mark: "memory",
    source: `finest grains, from memory; ${TRADE}`,
  },
  "slip-polish": {
    kind: "slipPolish",
    grade: null,
    grainUm: 0,
    dryAllowed: false,
    usesBeforeWorn: 40,
    mark: "common practice",
    source: TRADE,
  },
} as const satisfies Record<string, Abrasive>;

export type AbrasiveId = keyof typeof ABRASIVES;
export const ABRASIVE_IDS = Object.keys(ABRASIVES) as readonly AbrasiveId[];
export const NUMBERED_IDS = Object.keys(NUMBERED) as readonly NumberedId[];

/** What a proud plug is levelled with (common practice). */
export const LEVELS_A_PLUG: AbrasiveId = "paper-P400";
/** What polish over a finish is put on with. */
export const POLISHES: AbrasiveId = "cutting-polish";

/** The record of an abrasive by its name; null for what is none, or a shop's own. */
export function knownAbrasive(name: string | null): Abrasive | null {
  const all: Readonly<Record<string, Abrasive>> = ABRASIVES;
  return name !== null && Object.hasOwn(all, name) ? all[name] : null;
}

/** The number of an abrasive by its name; null where it has none. */
export function numberOf(name: string | null): number | null {
  return knownAbrasive(name)?.grade?.number ?? null;
}
