import { EngineFault, type Problem } from "../fault.ts";
import { evenPoints, normalDeviate } from "../random.ts";
import { CARRY_TABLE, type HitPoint, leaveChanceAt, type StrikeMap, strikeAt } from "./carry.ts";
import type { CarryTable } from "./carryGrid.ts";
import { isLeave, type Leave, leaveText } from "./leave.ts";

/** A leave that was seen, strikes too, in the right-hander's frame, and how often. */
export interface Seen {
  readonly leave: Leave;
  readonly count: number;
}

/** How a bowler's hits scatter about their mean at the pins: standard deviations. */
export interface HitScatter {
  readonly boards: number;
  readonly entryDeg: number;
}

export const TYPICAL_SCATTER: HitScatter = { boards: 1.1, entryDeg: 0.5 };

/** Figure with its 90 % interval. */
interface Estimate {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

/** Which hits explain what was left, and what would change it. */
export interface Explanation {
  /** Mean hit of the bowler, board in the pins' plane and entry angle. */
  readonly board: Estimate;
  readonly entryDeg: Estimate;
  /** Where the mean hit lies against the best one at its angle. */
  readonly lies: "light" | "high" | "there";
  /** Chance that it lies so. */
  readonly sure: number;
  /** Strike chance of such a bowler now, and the gain, 0–1, of each change of the mean hit. Best first. */
  readonly strike: Estimate;
  readonly changes: readonly Change[];
}

export interface Change {
  readonly change: "boardHigher" | "boardLighter" | "steeper" | "flatter";
  readonly gain: number;
}

const BOARDS = range(13, 21.5, 0.25);
const ENTRIES = range(0.5, 7.5, 0.5);
/** Gauss–Hermite nodes and weights for a normal distribution (Abramowitz & Stegun 25.4.46, five and three points). */
const FIVE: readonly (readonly [number, number])[] = [
  [-2.856970013872806, 0.011257411327721],
  [-1.355626179974266, 0.222075922005613],
  [0, 0.533333333333333],
  [1.355626179974266, 0.222075922005613],
  [2.856970013872806, 0.011257411327721],
];
const THREE: readonly (readonly [number, number])[] = [
  [-1.732050807568877, 1 / 6],
  [0, 2 / 3],
  [1.732050807568877, 1 / 6],
];
const THERE_BOARDS = 0.5;
const ENTRY_STEP_DEG = 1;
const LEAST = 1e-6;

/**
 * Explains leaves by the mean hit that makes them likeliest: every mean over 13–21.5 boards and 0.5–7.5° is weighed by the chance of what was seen under
 * its scatter (Bayes, even prior).
 *
 * @throws EngineFault when nothing was seen, a count is not a whole number above 0, or a scatter is not above 0.
 */
export function explain(seen: readonly Seen[], carry: StrikeMap, scatter = TYPICAL_SCATTER, table: CarryTable = CARRY_TABLE): Explanation {
  checkSeen(seen, scatter);
  const means = BOARDS.flatMap((board) => ENTRIES.map((entryDeg) => ({ board, entryDeg })));
  const logs = means.map(({ board, entryDeg }) =>
    seen.reduce(
      (sum, { leave, count }) =>
        sum +
        count *
          Math.log(
            Math.max(
              LEAST,
              scattered((b, e) => leaveChanceAt(leave, b, e, table), board, entryDeg, scatter),
            ),
          ),
      0,
    ),
  );
  const top = Math.max(...logs);
  const weights = logs.map((log) => Math.exp(log - top));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const share = weights.map((weight) => weight / total);
  const strikeOf = (board: number, entryDeg: number) => scattered((b, e) => strikeAt(carry, b, e), board, entryDeg, scatter);
  const bests = new Map(ENTRIES.map((entryDeg) => [entryDeg, bestBoard(entryDeg, strikeOf)]));
  const off = means.map(({ board, entryDeg }) => board - (bests.get(entryDeg) ?? board));
  const shareOf = (test: (by: number) => boolean) => share.reduce((sum, part, i) => (test(off[i]) ? sum + part : sum), 0);
  const sides = [
    { lies: "light" as const, sure: shareOf((by) => by < -THERE_BOARDS) },
    { lies: "high" as const, sure: shareOf((by) => by > THERE_BOARDS) },
    { lies: "there" as const, sure: shareOf((by) => Math.abs(by) <= THERE_BOARDS) },
  ];
  const likeliest = sides.reduce((a, b) => (b.sure > a.sure ? b : a));
  const strikes = means.map(({ board, entryDeg }) => strikeOf(board, entryDeg));
  const moved = (boards: number, degrees: number) =>
    means.reduce((sum, { board, entryDeg }, i) => sum + share[i] * (strikeOf(board + boards, entryDeg + degrees) - strikes[i]), 0);
  const changes: readonly Change[] = [
    { change: "boardHigher", gain: moved(1, 0) },
    { change: "boardLighter", gain: moved(-1, 0) },
    { change: "steeper", gain: moved(0, ENTRY_STEP_DEG) },
    { change: "flatter", gain: moved(0, -ENTRY_STEP_DEG) },
  ];
  return {
    board: estimate(
      means.map(({ board }) => board),
      share,
    ),
    entryDeg: estimate(
      means.map(({ entryDeg }) => entryDeg),
      share,
    ),
    ...likeliest,
    strike: estimate(strikes, share),
    changes: changes.toSorted((a, b) => b.gain - a.gain),
  };
}

function checkSeen(seen: readonly Seen[], scatter: HitScatter): void {
  const problems: Problem[] = [];
  if (seen.length === 0) problems.push({ path: "leaves", value: seen.length, allowed: "at least one" });
  for (const { leave, count } of seen) {
    if (!isLeave(leave)) problems.push({ path: "leaves", value: leave, allowed: "sets of pins 1–10" });
    else if (!(Number.isInteger(count) && count > 0))
      problems.push({ path: `leaves.${leaveText(leave)}`, value: count, allowed: "a whole number above 0" });
  }
  for (const [name, sd] of Object.entries(scatter))
    if (!(sd > 0)) problems.push({ path: `scatter.${name}`, value: sd, allowed: "above 0" });
  if (problems.length > 0) throw new EngineFault(problems);
}

/** Hits that stand for a scatter: a normal distribution's even shares in both directions. */
export function hitsAbout(mean: HitPoint, scatter: HitScatter): readonly HitPoint[] {
  const points = evenPoints(HITS_ABOUT, 2, 1).map(normalDeviate);
  return Array.from({ length: HITS_ABOUT }, (_, i) => ({
    ...mean,
    board: mean.board + points[2 * i] * scatter.boards,
    entryDeg: mean.entryDeg + points[2 * i + 1] * scatter.entryDeg,
  }));
}

const HITS_ABOUT = 256;

/** Mean of a chance over a bowler's scatter. */
function scattered(chance: (board: number, entryDeg: number) => number, board: number, entryDeg: number, scatter: HitScatter): number {
  let sum = 0;
  for (const [b, alongBoards] of FIVE)
    for (const [e, alongEntry] of THREE)
      sum += alongBoards * alongEntry * chance(board + b * scatter.boards, entryDeg + e * scatter.entryDeg);
  return sum;
}

function bestBoard(entryDeg: number, strikeOf: (board: number, entryDeg: number) => number): number {
  return BOARDS.reduce((best, board) => (strikeOf(board, entryDeg) > strikeOf(best, entryDeg) ? board : best));
}

/** Weighted mean and the 5 and 95 % points. */
function estimate(values: readonly number[], share: readonly number[]): Estimate {
  const order = values.map((_, i) => i).toSorted((a, b) => values[a] - values[b]);
  const at = (part: number) => {
    let sum = 0;
    for (const i of order) {
      sum += share[i];
      if (sum >= part) return values[i];
    }
    return values[order[order.length - 1]];
  };
  return { value: values.reduce((sum, value, i) => sum + value * share[i], 0), low: at(0.05), high: at(0.95) };
}

function range(from: number, to: number, step: number): readonly number[] {
  return Array.from({ length: Math.round((to - from) / step) + 1 }, (_, i) => from + i * step);
}

/** What one leave tells by itself: how its hits lie against the usual misses of somebody who aims at the pocket. */
export interface LeaveMeaning {
  /** Mean board of the hits that leave it, less the best board at their angle: above 0 is high. */
  readonly boardsHigh: number;
  /** Their mean entry angle less that of all hits looked at: above 0 is steep. */
  readonly degreesSteep: number;
}

/** @returns null for a leave that hits on the bowler's own side hardly ever make. */
export function leaveMeaning(leave: Leave, carry: StrikeMap, table: CarryTable = CARRY_TABLE): LeaveMeaning | null {
  const strikeOf = (board: number, entryDeg: number) => scattered((b, e) => strikeAt(carry, b, e), board, entryDeg, TYPICAL_SCATTER);
  let [total, boards, entries, all, allEntries] = [0, 0, 0, 0, 0];
  for (const entryDeg of ENTRIES) {
    const best = bestBoard(entryDeg, strikeOf);
    for (const board of BOARDS) {
      // Whoever aims at the pocket seldom comes far from it.
      const usual = Math.exp(
        -0.5 * (((board - best) / USUAL_MISS.boards) ** 2 + ((entryDeg - USUAL_ENTRY_DEG) / USUAL_MISS.entryDeg) ** 2),
      );
      const chance = usual * leaveChanceAt(leave, board, entryDeg, table);
      all += usual;
      allEntries += usual * entryDeg;
      total += chance;
      boards += chance * (board - best);
      entries += chance * entryDeg;
    }
  }
  if (total / all < WORTH_A_WORD) return null;
  return { boardsHigh: boards / total, degreesSteep: entries / total - allEntries / all };
}

const WORTH_A_WORD = 0.0001;
/** How far a bowler who aims at the pocket comes from it, standard deviations, and the usual entry angle: wide enough for every kind of leave. */
const USUAL_MISS: HitScatter = { boards: 1.6, entryDeg: 1.6 };
const USUAL_ENTRY_DEG = 4;
