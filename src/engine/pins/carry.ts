import type { Assumed } from "../assumptions.ts";
import { BOARD } from "../lane/geometry.ts";
import { normalDeviate } from "../random.ts";
import { INCH } from "../units.ts";
import { CARRY } from "./carryData.ts";
import { between, type CarryTable, ENTRY_AXIS, type HitQuality, OFFSET_AXIS, placeOn, type QualityName } from "./carryGrid.ts";
import { type Leave, mirrored, STRIKE } from "./leave.ts";
import { unpackTable } from "./packing.ts";

/** The carry table that ships with the engine. */
export const CARRY_TABLE: CarryTable = unpackTable(CARRY.packed);

/** Strike chance over all places and angles, for one quality of hit and one opinion of what the pins do. */
export interface StrikeMap {
  readonly chance: Float64Array;
}

const QUALITY_NAMES: readonly QualityName[] = ["speedMph", "slipMps", "massLb"];
/** The quality of hit that the table itself speaks of. */
export const TYPICAL_QUALITY: HitQuality = {
  speedMph: CARRY_TABLE.qualities.speedMph.typical,
  slipMps: CARRY_TABLE.qualities.slipMps.typical,
  massLb: CARRY_TABLE.qualities.massLb.typical,
};
const BOARD_IN = BOARD / INCH;
/** The chosen rank is held this far from the impossible ends. */
const RANK_EDGE = 0.02;
const Z_90 = 1.6449;

/** The map for a quality of hit under assumptions `carry.level` and `carry.shape` (ranks in 0–1, the middle is the fitted mean). */
export function strikeMap(assumed: Assumed, quality: HitQuality = TYPICAL_QUALITY, table: CarryTable = CARRY_TABLE): StrikeMap {
  const [level, shape] = [deviateOf(assumed["carry.level"]), deviateOf(assumed["carry.shape"])];
  const all = qualityShift(TYPICAL_QUALITY, quality, table);
  return { chance: table.strike.map((chance, cell) => shifted(chance, all + level * table.level[cell] + shape * table.shape[cell])) };
}

/** Between these boards lies the peak of every entry angle's strikes: where a pocket hit is. */
const PEAK_BOARDS = [16, 19] as const;

/**
 * The same map with no more than can be trusted: along each entry angle the chance only falls on the way out from the pocket's peak. So a second hill far
 * from the pocket, which no published record shows, earns nothing, and neither does crossing over.
 */
export function trusted({ chance }: StrikeMap): StrikeMap {
  const held = chance.slice();
  const rows = OFFSET_AXIS.count;
  const columns = ENTRY_AXIS.count;
  const [first, last] = PEAK_BOARDS.map((board) => Math.round((offsetOf(board) - OFFSET_AXIS.from) / OFFSET_AXIS.step)).sort(
    (a, b) => a - b,
  );
  for (let column = 0; column < columns; column++) {
    let peak = first;
    for (let row = first; row <= last; row++) if (held[row * columns + column] > held[peak * columns + column]) peak = row;
    for (let row = peak + 1; row < rows; row++) fall(held, row * columns + column, (row - 1) * columns + column);
    for (let row = peak - 1; row >= 0; row--) fall(held, row * columns + column, (row + 1) * columns + column);
  }
  return { chance: held };
}

function fall(chance: Float64Array, at: number, nearer: number): void {
  if (chance[at] > chance[nearer]) chance[at] = chance[nearer];
}

/** A ball that meets the corner pin full, in from the middle, and brings down that one pin. */
const CORNER_PIN_IN = 18;

/**
 * Pins down with the first ball of one hit, 0–10, under the fitted mean. Beyond the table's edge it falls evenly to the one pin of a ball on the corner pin
 * (chosen: nothing is published), so that whoever rarely finds the pocket is not told that every miss is alike.
 */
export function pinsAt(board: number, entryDeg: number, table: CarryTable = CARRY_TABLE): number {
  const offset = entryDeg < 0 ? -offsetOf(board) : offsetOf(board);
  const down = between(table.pinsDown, placeOn(offset, Math.abs(entryDeg)));
  const edge = offset < 0 ? -OFFSET_AXIS.from : OFFSET_AXIS.from + (OFFSET_AXIS.count - 1) * OFFSET_AXIS.step;
  const beyond = (Math.abs(offset) - edge) / (CORNER_PIN_IN - edge);
  return beyond <= 0 ? down : Math.max(Math.min(1, down), down + (1 - down) * Math.min(1, beyond));
}

/** By how much the log odds of a strike move from one quality of hit to another; beyond what was simulated the edge holds. */
export function qualityShift(from: HitQuality, to: HitQuality, { qualities }: CarryTable = CARRY_TABLE): number {
  let sum = 0;
  for (const name of QUALITY_NAMES) {
    const { low, high, slope } = qualities[name];
    sum += slope * (Math.min(high, Math.max(low, to[name])) - Math.min(high, Math.max(low, from[name])));
  }
  return sum;
}

function deviateOf(rank: number): number {
  return rank === 0.5 ? 0 : normalDeviate(Math.min(1 - RANK_EDGE, Math.max(RANK_EDGE, rank)));
}

/** A chance whose log odds are moved. */
function shifted(chance: number, by: number): number {
  if (chance <= 0 || chance >= 1) return chance;
  return 1 / (1 + ((1 - chance) / chance) * Math.exp(-by));
}

/** Offset of the ball's centre to the right of the middle, in, of a (fractional) board in the pins' plane, for a right-hander. */
export function offsetOf(board: number): number {
  return (20 - board) * BOARD_IN;
}

export function boardOf(offsetIn: number): number {
  return 20 - offsetIn / BOARD_IN;
}

/** The axes of the table, for the innermost loop. */
const OFFSET_FROM = OFFSET_AXIS.from;
const AN_OFFSET = 1 / OFFSET_AXIS.step;
const LAST_OFFSET = OFFSET_AXIS.count - 1.000001;
const ENTRY_FROM = ENTRY_AXIS.from;
const AN_ENTRY = 1 / ENTRY_AXIS.step;
const LAST_ENTRY = ENTRY_AXIS.count - 1.000001;
const ENTRIES = ENTRY_AXIS.count;

/**
 * Strike chance of one hit, 0–1: board (from the bowler's hand side) in the pins' plane, entry angle in degrees towards the middle, negative for a ball
 * that comes the other way. This is the plan's innermost loop: straight lines between cells, no allocation.
 */
export function strikeAt({ chance }: StrikeMap, board: number, entryDeg: number): number {
  const side = entryDeg < 0 ? -1 : 1;
  let i = (side * (20 - board) * BOARD_IN - OFFSET_FROM) * AN_OFFSET;
  if (i < 0) i = 0;
  else if (i > LAST_OFFSET) i = LAST_OFFSET;
  let j = (side * entryDeg - ENTRY_FROM) * AN_ENTRY;
  if (j < 0) j = 0;
  else if (j > LAST_ENTRY) j = LAST_ENTRY;
  const row = i | 0;
  const column = j | 0;
  const near = row * ENTRIES + column;
  const far = near + ENTRIES;
  const a = chance[near] + (chance[near + 1] - chance[near]) * (j - column);
  const b = chance[far] + (chance[far + 1] - chance[far]) * (j - column);
  return a + (b - a) * (i - row);
}

/** One hit, in the bowler's own frame (boards from the hand side). */
export interface HitPoint {
  readonly board: number;
  readonly entryDeg: number;
  readonly quality: HitQuality;
}

/** What some hits leave: shares that sum to one. */
export interface CarryResult {
  readonly strike: number;
  readonly pinsDown: number;
  /** Shares of the leaves kept one by one, commonest first; as the right-hander sees them, strikes apart. */
  readonly leaves: readonly LeaveShare[];
  /** Share of everything else that is no strike. */
  readonly other: number;
}

export interface LeaveShare {
  readonly leave: Leave;
  readonly share: number;
}

/** Leaves below this share of all balls are not named: the simulation cannot be trusted so far. */
const LEAST_SHARE = 0.001;

/**
 * What a cloud of hits brings down and leaves, the most likely `named` of the leaves by name, under the fitted mean of the coefficients.
 *
 * @param hits at least one
 */
export function carryOf(hits: readonly HitPoint[], named = 10, table: CarryTable = CARRY_TABLE): CarryResult {
  const sums = new Map<Leave, number>();
  let [strike, pinsDown] = [0, 0];
  for (const { board, entryDeg, quality } of hits) {
    const isMirrored = entryDeg < 0;
    const place = placeOn(isMirrored ? -offsetOf(board) : offsetOf(board), Math.abs(entryDeg));
    const mean = between(table.strike, place);
    const own = shifted(mean, qualityShift(TYPICAL_QUALITY, quality, table));
    // The table's leaves share what the strikes of this quality of hit leave over.
    const left = mean < 1 ? (1 - own) / (1 - mean) : 0;
    strike += own / hits.length;
    pinsDown += (10 - left * (10 - between(table.pinsDown, place))) / hits.length;
    for (const [k, kept] of table.leaves.entries()) {
      const leave = isMirrored ? mirrored(kept) : kept;
      const share = (left * between(table.leaveChance, place, table.leaves.length, k)) / hits.length;
      sums.set(leave, (sums.get(leave) ?? 0) + share);
    }
  }
  return ranked(sums, strike, pinsDown, named);
}

function ranked(sums: ReadonlyMap<Leave, number>, strike: number, pinsDown: number, named: number): CarryResult {
  const total = [...sums.values()].reduce((sum, share) => sum + share, 0);
  // Rounding of the stored squares may exceed what is left by a hair; the shares must still sum to one.
  const room = 1 - strike;
  const scale = total > room && total > 0 ? room / total : 1;
  const leaves = [...sums]
    .map(([leave, share]) => ({ leave, share: share * scale }))
    .filter(({ share }) => share >= LEAST_SHARE)
    .sort((a, b) => b.share - a.share || a.leave - b.leave)
    .slice(0, named);
  const other = leaves.reduce((rest, { share }) => rest - share, room);
  return { strike, pinsDown: Math.min(10, Math.max(0, pinsDown)), leaves, other: Math.max(0, other) };
}

/**
 * Mean strike chance of some hits with its 90 % interval: the fitted sets of coefficients, which move all hits together, and the number of runs.
 *
 * @param hits at least one
 */
export function chanceOver(hits: readonly HitPoint[], table: CarryTable = CARRY_TABLE): { value: number; low: number; high: number } {
  let [value, level, shape, sampling] = [0, 0, 0, 0];
  for (const { board, entryDeg, quality } of hits) {
    const place = placeOn(entryDeg < 0 ? -offsetOf(board) : offsetOf(board), Math.abs(entryDeg));
    const chance = shifted(between(table.strike, place), qualityShift(TYPICAL_QUALITY, quality, table));
    const weight = (chance * (1 - chance)) / hits.length;
    value += chance / hits.length;
    level += weight * between(table.level, place);
    shape += weight * between(table.shape, place);
    sampling += weight * between(table.sampling, place);
  }
  const room = value * (1 - value);
  if (room === 0) return { value, low: value, high: value };
  const by = (Z_90 * Math.hypot(level, shape, sampling)) / room;
  return { value, low: shifted(value, -by), high: shifted(value, by) };
}

/** Chance of one leave at a hit, 0–1; of a leave that the table does not keep one by one, an even part of the rest. */
export function leaveChanceAt(leave: Leave, board: number, entryDeg: number, table: CarryTable = CARRY_TABLE): number {
  const isMirrored = entryDeg < 0;
  const place = placeOn(isMirrored ? -offsetOf(board) : offsetOf(board), Math.abs(entryDeg));
  if (leave === STRIKE) return between(table.strike, place);
  const k = table.leaves.indexOf(isMirrored ? mirrored(leave) : leave);
  if (k >= 0) return between(table.leaveChance, place, table.leaves.length, k);
  const kept = table.leaves.reduce((sum, _, at) => sum + between(table.leaveChance, place, table.leaves.length, at), 0);
  return Math.max(0, 1 - between(table.strike, place) - kept) / (UNNAMED_LEAVES - table.leaves.length);
}

/** Sets of standing pins but for the strike. */
const UNNAMED_LEAVES = 1023;

/** Hand mirrored: leaves are computed for a right-hander and told in the bowler's own frame. */
export function leaveSeen(leave: Leave, hand: "right" | "left"): Leave {
  return hand === "right" ? leave : mirrored(leave);
}
