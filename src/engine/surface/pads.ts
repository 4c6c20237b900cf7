import { type Grade, type GradingId, grade } from "./grading.ts";

/** A foam-backed pad by its number: all that the program knows of it. A new number is one record here, and nothing else. */
export interface Pad {
  readonly number: number;
  /** Effective roughness that a fresh one leaves, µm, as the friction law takes it; null where nobody remembers a reading: then between its neighbours. */
  readonly raUm: number | null;
  /** Median grain, µm; null: as the P system has it. */
  readonly grainUm: number | null;
  /** Balls (six sides) before it cuts like the next finer one. */
  readonly usesBeforeWorn: number;
  /** Whether it may be used dry, as at the lane. */
  readonly dryAllowed: boolean;
  /** What is asked for at the counter: the number, and polish over it too. */
  readonly atCounter: "plain" | "plain and polished";
  /** Whether it is carried to the lane. */
  readonly atLane: boolean;
  /** Whether most shops keep it. */
  readonly inMostShops: boolean;
  readonly source: string;
}

const REMEMBERED = "roughness: readings of the trade from memory, times roughness.readingFactor, made one set with the calibrated friction";
const NOT_READ = "roughness: no reading remembered";
const USED = "uses, and what is asked for: common practice";

const FOAM = { grainUm: null, dryAllowed: true, atCounter: "plain and polished", atLane: true, inMostShops: true } as const;

/**
 * From coarse to fine: the one table of what pads there are, what they leave and where they are offered. Every roughness ± `roughness.scale`. The grades follow
 * a system that no maker was read to state; taken as the P system until a pad says otherwise.
 */
export const PADS = [
  { ...FOAM, number: 360, raUm: 1.5, usesBeforeWorn: 20, atCounter: "plain", atLane: false, source: `${REMEMBERED}; ${USED}` },
  { ...FOAM, number: 500, raUm: 1.1, usesBeforeWorn: 20, source: `${REMEMBERED}; ${USED}` },
  { ...FOAM, number: 800, raUm: null, usesBeforeWorn: 20, atCounter: "plain", atLane: false, source: `${NOT_READ}; ${USED}` },
  { ...FOAM, number: 1000, raUm: 0.7, usesBeforeWorn: 20, source: `${REMEMBERED}; ${USED}` },
  { ...FOAM, number: 1500, raUm: null, usesBeforeWorn: 25, atLane: false, source: `${NOT_READ}; ${USED}` },
  { ...FOAM, number: 2000, raUm: 0.45, usesBeforeWorn: 25, source: `${REMEMBERED}; ${USED}` },
  { ...FOAM, number: 3000, raUm: 0.3, usesBeforeWorn: 30, source: `${REMEMBERED}; ${USED}` },
  {
    ...FOAM,
    number: 4000,
    raUm: 0.22,
    // The P system has no 4000; between its remembered 3000 and 5000.
    grainUm: 5.7,
    usesBeforeWorn: 30,
    source: `grain: from memory; ${REMEMBERED}; ${USED}`,
  },
  {
    ...FOAM,
    number: 5000,
    raUm: 0.18,
    usesBeforeWorn: 30,
    atCounter: "plain",
    atLane: false,
    inMostShops: false,
    source: `${REMEMBERED}; ${USED}`,
  },
] as const satisfies readonly Pad[];

export type PadNumber = (typeof PADS)[number]["number"];
export const PAD_NUMBERS: readonly PadNumber[] = PADS.map(({ number }) => number);

/** The pad about which the whole ladder is wider or narrower. */
export const MIDDLE_NUMBER: PadNumber = 2000;
/** Where the ladder starts on a surface that is cut back: dull enough to be rid of whatever was there, and no cover minds it (common practice). */
export const CUT_BACK_TO: PadNumber = 500;
/** What a surface is opened with before oil is drawn out (common practice). */
export const OPENED_WITH: PadNumber = 500;
/** Sanding this coarse takes the old surface off: resurfacing, as the trade uses the word (common practice). */
export const RESURFACED_FROM: PadNumber = 500;
/** A last number below this, without polish, may read above the limit of new balls: a fresh 360 reads 40–50 µin, from memory. */
export const VERY_DULL_BELOW: PadNumber = 500;
/** Up to this number wet paper is what a cover that it suits is worked with in earnest, and its hazard is named with the plan. */
export const WET_PAPER_TO: PadNumber = 1000;

/** The finishes that a ball is tried with where nobody says other: far enough apart that what they differ by is seen over the scatter. */
export const TRIAL_FINISHES: readonly [dull: string, smooth: string] = ["500", "4000 + polish"];

const SYSTEM: GradingId = "isoP";

/** @throws RangeError for a pad whose grain is stated neither by itself nor by the P system: no grain is guessed. */
export function gradeOf({ number, grainUm }: Pick<Pad, "number" | "grainUm">): Grade {
  if (grainUm !== null) return { system: SYSTEM, number, grainUm, mark: "memory" };
  const known = grade(SYSTEM, number);
  if (known === null) throw new RangeError(`pad ${number}: the P system has no such number, so its record has to state grainUm`);
  return known;
}

/** One point of a table: a number and what belongs to it, rising numbers. */
type Row = readonly [number: number, value: number];

/** Coarser than any pad there is only paper, for plug work: what it leaves is chosen, as the pads' step from 500 to 360 goes on, µm. */
const COARSER: readonly Row[] = [
  [240, 2.2],
  [320, 1.676],
];
const READ: readonly Row[] = (PADS as readonly Pad[]).flatMap(({ number, raUm }): Row[] => (raUm === null ? [] : [[number, raUm]]));
const ROUGHNESS: readonly Row[] = [...COARSER, ...READ];
const GRAIN: readonly Row[] = PADS.map((pad): Row => [pad.number, gradeOf(pad).grainUm]);

/** Numbers that a finish may be asked for by: those of the pads and all between them. */
export const FINISHES_FROM: number = PADS[0].number;
export const FINISHES_TO: number = PADS[PADS.length - 1].number;
/** Numbers of which it is known what they leave. */
export const LEAVES_FROM: number = ROUGHNESS[0][0];
export const LEAVES_TO: number = ROUGHNESS[ROUGHNESS.length - 1][0];

/** Effective roughness that a fresh abrasive of a number leaves, µm; between two that are known a straight line in the logarithms. Null outside the table: nothing is extrapolated. */
export function freshRaUm(number: number): number | null {
  return number >= LEAVES_FROM && number <= LEAVES_TO ? between(ROUGHNESS, number) : null;
}

/** Median grain of a number that a finish may have, µm; between two pads a straight line in the logarithms. Null outside the table. */
export function grainOfNumberUm(number: number): number | null {
  return number >= FINISHES_FROM && number <= FINISHES_TO ? between(GRAIN, number) : null;
}

/** In a table of rising numbers, straight in the logarithms, for a number within it. */
function between(rows: readonly Row[], number: number): number {
  const after = Math.max(
    1,
    rows.findIndex(([n]) => n >= number),
  );
  const [fromNumber, from] = rows[after - 1];
  const [toNumber, to] = rows[after];
  const share = Math.log(number / fromNumber) / Math.log(toNumber / fromNumber);
  return from * (to / from) ** share;
}
