import type { Spread } from "../delivery/bowler.ts";
import { xToBoard } from "../lane/geometry.ts";
import { emptyRun, SCORED_STEP } from "../motion/averaged.ts";
import type { Thrower } from "../motion/track.ts";
import { pinsAt, qualityShift, type StrikeMap, strikeAt } from "../pins/carry.ts";
import type { GridAxis, HitQuality } from "../pins/carryGrid.ts";
import type { Limits } from "./question.ts";
import { boardAtPins, entryDegOf, NOWHERE, nudged, OFF_LANE_BOARD, type Off, qualityOf, throwBall } from "./thrown.ts";

/**
 * The chance of a strike on every line a bowler can play, without a die: shots of eight deliveries are thrown from a coarse grid of lines, raised to a fine
 * one, looked up in the carry table, averaged, and smeared by the bowler's own scatter in laydown and launch. See docs/model/finish-plan.md.
 */
export interface LineMap {
  /** The fine grid: boards and degrees; rows are laydowns. */
  readonly laydown: GridAxis;
  readonly launch: GridAxis;
  /** Mean strike chance of the bowler's shots on a line, 0–1. */
  readonly chance: Float64Array;
  /** Mean pins down with the first ball, 0–10; null where the map holds only what comes near the pocket. */
  readonly pins: Float64Array | null;
  /** The shot in the middle of the bowler's deliveries: NaN-free, {@link NOWHERE} where no ball of the line comes near the pins. */
  readonly board: Float64Array;
  readonly entry: Float64Array;
  readonly breakpoint: Float64Array;
}

/** Nodes that are thrown, and so many steps of the fine grid between two of them. */
const NODE_BOARDS = 2;
const NODE_DEGREES = 0.3;
const FINE_A_NODE_ACROSS = 4;
const FINE_A_NODE_ROUND = 3;
/** The scan that finds which nodes come near the pocket at all looks at every second launch angle. */
const SCAN_EVERY = 2;
/** Only nodes between four looks of the scan whose boards come into this stretch are thrown: beyond it hardly a ball strikes. */
const NEAR_PINS = { from: 13.5, to: 21, margin: 0.5 } as const;
/** The grid reaches so many standard deviations of the bowler's scatter beyond the lines that can be played. */
const MARGIN_SD = 3;

/** All signs of one standard deviation of speed, rev rate and rotation: the same means and variances as the bowler's own scatter. */
const DELIVERIES: readonly Off[] = [1, -1].flatMap((speed) =>
  [1, -1].flatMap((revs) => [1, -1].map((rotation): Off => [speed, revs, rotation])),
);

/** @param everywhere true throws every node, for who rarely strikes: four times the work, and pins besides strikes */
export function lineMap(thrower: Thrower, usual: HitQuality, strikes: StrikeMap, limits: Limits, everywhere = false): LineMap {
  const nodes = nodeGrid(limits, thrower.bowler.spread);
  const wanted = everywhere ? null : nearThePins(thrower, nodes);
  const [laydown, launch] = [finer(nodes.laydown, FINE_A_NODE_ACROSS), finer(nodes.launch, FINE_A_NODE_ROUND)];
  const size = laydown.count * launch.count;
  const chance = new Float64Array(size);
  const pins = everywhere ? new Float64Array(size) : null;
  const middle = { board: new Float64Array(size), entry: new Float64Array(size), breakpoint: new Float64Array(size) };
  const seen = new Uint8Array(size);
  const thrown = noOutcomes(nodes.laydown.count * nodes.launch.count);
  const along = noOutcomes(nodes.laydown.count * launch.count);
  const raised = noOutcomes(size);
  for (const delivery of DELIVERIES) {
    throwNodes(thrower, usual, nodes, wanted, delivery, thrown);
    raise(thrown, nodes, along, raised, laydown, launch);
    for (let at = 0; at < size; at++) {
      if (raised.isThere[at] === 0) continue;
      seen[at]++;
      middle.board[at] += raised.board[at];
      middle.entry[at] += raised.entry[at];
      middle.breakpoint[at] += raised.breakpoint[at];
      if (raised.breakpoint[at] < OFF_LANE_BOARD) continue;
      chance[at] += nudged(strikeAt(strikes, raised.board[at], raised.entry[at]), raised.shift[at]) / DELIVERIES.length;
      if (pins !== null) pins[at] += pinsAt(raised.board[at], raised.entry[at]) / DELIVERIES.length;
    }
  }
  for (let at = 0; at < size; at++) {
    const share = seen[at] === DELIVERIES.length ? 1 / DELIVERIES.length : 0;
    middle.board[at] = share > 0 ? middle.board[at] * share : NOWHERE;
    middle.entry[at] *= share;
    middle.breakpoint[at] = share > 0 ? middle.breakpoint[at] * share : NOWHERE;
  }
  smear(chance, laydown, launch, thrower.bowler.spread);
  if (pins !== null) smear(pins, laydown, launch, thrower.bowler.spread);
  return { laydown, launch, chance, pins, ...middle };
}

interface NodeGrid {
  readonly laydown: GridAxis;
  readonly launch: GridAxis;
}

function nodeGrid({ laydownBoard, launchAngleDeg }: Limits, spread: Spread): NodeGrid {
  return {
    laydown: axisOver(laydownBoard, MARGIN_SD * spread.laydownBoards, NODE_BOARDS, 1),
    launch: axisOver(launchAngleDeg, MARGIN_SD * spread.launchAngleDeg, NODE_DEGREES, SCAN_EVERY),
  };
}

/** From the least with its margin on, so that the limits themselves lie on the fine grid. */
function axisOver([least, most]: readonly [number, number], margin: number, step: number, every: number): GridAxis {
  const before = Math.ceil(margin / step - 1e-9);
  const count = Math.ceil((most - least + margin) / step - 1e-9) + before + 1;
  // The scan looks at every so many nodes, the last one among them.
  const whole = Math.max(every, Math.ceil((count - 1) / every) * every) + 1;
  return { from: least - before * step, step, count: whole };
}

function finer({ from, step, count }: GridAxis, by: number): GridAxis {
  return { from, step: step / by, count: (count - 1) * by + 1 };
}

/** Which nodes to throw: those in or next to a field of the scan into whose range of boards the pocket's neighbourhood falls. */
function nearThePins(thrower: Thrower, { laydown, launch }: NodeGrid): Uint8Array {
  const columns = (launch.count - 1) / SCAN_EVERY + 1;
  const board = new Float64Array(laydown.count * columns);
  const run = emptyRun();
  for (let i = 0; i < laydown.count; i++) {
    for (let j = 0; j < columns; j++) {
      throwBall(thrower, laydown.from + i * laydown.step, launch.from + j * SCAN_EVERY * launch.step, run, undefined, SCORED_STEP);
      board[i * columns + j] = boardAtPins(run);
    }
  }
  const wanted = new Uint8Array(laydown.count * launch.count);
  for (let i = 0; i + 1 < laydown.count; i++) {
    for (let j = 0; j + 1 < columns; j++) {
      const at = i * columns + j;
      const [a, b, c, d] = [board[at], board[at + 1], board[at + columns], board[at + columns + 1]];
      if (Math.max(a, b, c, d) < NEAR_PINS.from - NEAR_PINS.margin || Math.min(a, b, c, d) > NEAR_PINS.to + NEAR_PINS.margin) continue;
      for (let column = j * SCAN_EVERY; column <= (j + 1) * SCAN_EVERY; column++) {
        wanted[i * launch.count + column] = 1;
        wanted[(i + 1) * launch.count + column] = 1;
      }
    }
  }
  return wanted;
}

/** Where the nodes end; `isThere` 0 where a node was not thrown or its ball does not get to the pins. */
interface Outcomes {
  readonly isThere: Uint8Array;
  readonly board: Float64Array;
  readonly entry: Float64Array;
  readonly breakpoint: Float64Array;
  /** By how much speed and slip left move the log odds of a strike, against the quality that the strike map was made for. */
  readonly shift: Float64Array;
}

function noOutcomes(size: number): Outcomes {
  const numbers = () => new Float64Array(size);
  return { isThere: new Uint8Array(size), board: numbers(), entry: numbers(), breakpoint: numbers(), shift: numbers() };
}

function throwNodes(
  thrower: Thrower,
  usual: HitQuality,
  { laydown, launch }: NodeGrid,
  wanted: Uint8Array | null,
  delivery: Off,
  outcomes: Outcomes,
): void {
  outcomes.isThere.fill(0);
  const run = emptyRun();
  for (let i = 0; i < laydown.count; i++) {
    for (let j = 0; j < launch.count; j++) {
      const at = i * launch.count + j;
      if (wanted !== null && wanted[at] === 0) continue;
      throwBall(thrower, laydown.from + i * laydown.step, launch.from + j * launch.step, run, delivery, SCORED_STEP);
      if (run.reached === 0) continue;
      outcomes.isThere[at] = 1;
      outcomes.board[at] = boardAtPins(run);
      outcomes.entry[at] = entryDegOf(run);
      outcomes.breakpoint[at] = xToBoard(run.breakX);
      outcomes.shift[at] = qualityShift(usual, qualityOf(run, usual.massLb));
    }
  }
}

/** From nodes to the fine grid, first along the launch angle, then across: boards by cubics through thrown nodes only, the rest by straight lines. */
function raise(thrown: Outcomes, nodes: NodeGrid, along: Outcomes, fine: Outcomes, laydown: GridAxis, launch: GridAxis): void {
  const rows = nodes.laydown.count;
  along.isThere.fill(0);
  fine.isThere.fill(0);
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < launch.count; column++) {
      between(thrown, row * nodes.launch.count, 1, nodes.launch.count, column, FINE_A_NODE_ROUND, along, row * launch.count + column);
    }
  }
  for (let row = 0; row < laydown.count; row++) {
    for (let column = 0; column < launch.count; column++) {
      between(along, column, launch.count, rows, row, FINE_A_NODE_ACROSS, fine, row * launch.count + column);
    }
  }
}

/** One value of the fine grid from the line of nodes that starts at `first`, `stride` apart; nothing where a neighbour is missing. */
function between(
  from: Outcomes,
  first: number,
  stride: number,
  count: number,
  place: number,
  fineANode: number,
  into: Outcomes,
  at: number,
): void {
  const node = Math.min(count - 2, Math.floor(place / fineANode));
  const share = place / fineANode - node;
  const here = first + node * stride;
  const next = here + stride;
  if ((share < 1 && from.isThere[here] === 0) || (share > 0 && from.isThere[next] === 0)) return;
  into.isThere[at] = 1;
  if (share === 0 || share === 1) {
    const same = share === 0 ? here : next;
    into.board[at] = from.board[same];
    into.entry[at] = from.entry[same];
    into.breakpoint[at] = from.breakpoint[same];
    into.shift[at] = from.shift[same];
    return;
  }
  const [a, b] = [from.board[here], from.board[next]];
  const before = node > 0 && from.isThere[here - stride] === 1 ? from.board[here - stride] : 2 * a - b;
  const after = node + 2 < count && from.isThere[next + stride] === 1 ? from.board[next + stride] : 2 * b - a;
  // Catmull and Rom's cubic (1974): through both nodes, with the slopes of their neighbours.
  into.board[at] = a + 0.5 * share * (b - before + share * (2 * before - 5 * a + 4 * b - after + share * (3 * (a - b) + after - before)));
  into.entry[at] = from.entry[here] + (from.entry[next] - from.entry[here]) * share;
  into.breakpoint[at] = from.breakpoint[here] + (from.breakpoint[next] - from.breakpoint[here]) * share;
  into.shift[at] = from.shift[here] + (from.shift[next] - from.shift[here]) * share;
}

/** Smears a map by the bowler's scatter in launch and laydown, in place: what is thrown on a line lands on its neighbours too. */
function smear(values: Float64Array, laydown: GridAxis, launch: GridAxis, spread: Spread): void {
  const round = weightsOf(spread.launchAngleDeg / launch.step);
  const across = weightsOf(spread.laydownBoards / laydown.step);
  const line = new Float64Array(Math.max(laydown.count, launch.count));
  for (let row = 0; row < laydown.count; row++) smearLine(values, row * launch.count, 1, launch.count, round, line);
  for (let column = 0; column < launch.count; column++) smearLine(values, column, launch.count, laydown.count, across, line);
}

/** Weights of a normal scatter of `sd` steps, from the middle outwards; they sum to one over both sides. */
function weightsOf(sd: number): Float64Array {
  const reach = Math.ceil(MARGIN_SD * sd);
  const weights = Float64Array.from({ length: reach + 1 }, (_, k) => (sd > 0 ? Math.exp(-0.5 * (k / sd) ** 2) : 1));
  const total = weights.reduce((sum, weight, k) => sum + (k === 0 ? weight : 2 * weight), 0);
  return weights.map((weight) => weight / total);
}

function smearLine(values: Float64Array, first: number, stride: number, count: number, weights: Float64Array, line: Float64Array): void {
  for (let i = 0; i < count; i++) line[i] = values[first + i * stride];
  for (let i = 0; i < count; i++) {
    let sum = weights[0] * line[i];
    for (let k = 1; k < weights.length; k++) {
      if (i >= k) sum += weights[k] * line[i - k];
      if (i + k < count) sum += weights[k] * line[i + k];
    }
    values[first + i * stride] = sum;
  }
}
