import type { Leave } from "./leave.ts";

/** An evenly spaced axis of the table. */
export interface GridAxis {
  readonly from: number;
  readonly step: number;
  readonly count: number;
}

/** Offset of the ball's centre to the right of the lane's middle in the pins' plane, in; a right-hander's pocket is near 2.7. */
export const OFFSET_AXIS: GridAxis = { from: -7, step: 0.25, count: 57 };
/** Entry angle, deg, towards the left. A ball that comes the other way is the same hit in a mirror. */
export const ENTRY_AXIS: GridAxis = { from: 0, step: 0.5, count: 17 };
export const CELLS = OFFSET_AXIS.count * ENTRY_AXIS.count;

/**
 * The carry table as numbers, cell by cell (offset by offset, entry angles running fastest).
 * Made by `npm run build:carry`; docs/model/carry.md says how.
 */
export interface CarryTable {
  /** Strike chance, 0–1: the mean over the fitted sets of coefficients. */
  readonly strike: Float64Array;
  /** How the chance's log odds move with one standard deviation of the two ways in which the fitted sets differ most. */
  readonly level: Float64Array;
  readonly shape: Float64Array;
  /** Standard error of the log odds from the number of runs alone. */
  readonly sampling: Float64Array;
  /** The leaves kept one by one, commonest first. */
  readonly leaves: readonly Leave[];
  /** Chance of each kept leave, `leaves.length` a cell; what is missing to one, with the strike, is `other`. */
  readonly leaveChance: Float64Array;
  /** Mean number of pins that the first ball brings down. */
  readonly pinsDown: Float64Array;
  /** How the rest of the hit moves the chance. */
  readonly qualities: Readonly<Record<QualityName, Quality>>;
}

/** What a hit has besides place and angle: speed in the pins' plane, slip left in the contact, and the ball's weight. */
export interface HitQuality {
  readonly speedMph: number;
  readonly slipMps: number;
  readonly massLb: number;
}
export type QualityName = keyof HitQuality;

/** The table's own value of a quality, how far it was simulated, and what one unit of it adds to the log odds of a strike on a pocket hit. */
export interface Quality {
  readonly typical: number;
  readonly low: number;
  readonly high: number;
  readonly slope: number;
}

/** Where a table came from. */
export interface Provenance {
  /** The engine for rigid bodies, with its version. */
  readonly engine: string;
  /** Name of the list of runs: its seed and the digest of the fitted coefficients. */
  readonly design: string;
  readonly runs: number;
  readonly calibrationRuns: number;
  /** Day on which it was made. */
  readonly made: string;
}

/** A place between four cells, with the share of each. */
export interface Place {
  readonly cell: number;
  readonly alongOffset: number;
  readonly alongEntry: number;
}

/** Bilinear place; outside the axes the edge holds. */
export function placeOn(offsetIn: number, entryDeg: number): Place {
  const i = onAxis(OFFSET_AXIS, offsetIn);
  const j = onAxis(ENTRY_AXIS, entryDeg);
  const [row, column] = [Math.floor(i), Math.floor(j)];
  return { cell: row * ENTRY_AXIS.count + column, alongOffset: i - row, alongEntry: j - column };
}

function onAxis({ from, step, count }: GridAxis, value: number): number {
  return Math.min(count - 1.000001, Math.max(0, (value - from) / step));
}

/** A plane of the table between its cells. `stride` numbers a cell, the `at`-th of them. */
export function between(plane: Float64Array, { cell, alongOffset, alongEntry }: Place, stride = 1, at = 0): number {
  const near = cell * stride + at;
  const far = near + ENTRY_AXIS.count * stride;
  const a = plane[near] + (plane[near + stride] - plane[near]) * alongEntry;
  const b = plane[far] + (plane[far + stride] - plane[far]) * alongEntry;
  return a + (b - a) * alongOffset;
}
