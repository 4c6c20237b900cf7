import type { Line } from "../delivery/bowler.ts";
import { POCKET_BOARD, xToBoard } from "../lane/geometry.ts";
import { type AveragedRun, emptyRun, SCORED_STEP } from "../motion/averaged.ts";
import type { Thrower } from "../motion/track.ts";
import { qualityShift, type StrikeMap, strikeAt } from "../pins/carry.ts";
import type { HitQuality } from "../pins/carryGrid.ts";
import type { Limits } from "./question.ts";
import { spreadSample, VARIED } from "./spreadSample.ts";
import { boardAtPins, entryDegOf, nudged, OFF_LANE_BOARD, type Off, qualityOf, throwBall } from "./thrown.ts";

/**
 * The neighbourhood of one line: the exact launch curve at a few angles, the slope against laydown, and the responses to the rest of the spread.
 * Some twenty shots instead of a whole map; it serves the many draws of the assumptions (docs/model/finish-plan.md has its error).
 */
export interface Neighbourhood {
  readonly launchAngleDeg: number;
  readonly board: Float64Array;
  readonly entry: Float64Array;
  readonly breakpoint: Float64Array;
  /** By how much the line's speed and slip left move the log odds of a strike. */
  readonly shift: number;
  /** Linear and quadratic response of board and entry to a board of laydown. */
  readonly laydown: readonly [number, number, number, number];
  readonly response: Float64Array;
}

const NODE_STEP = 0.4;
const NODES = 9;
const MIDDLE = (NODES - 1) / 2;
/** Re-aiming under other assumptions: a few secant steps, each at most this far, deg. */
const AIM_STEPS = 5;
const AIM_STRIDE = 1.5;
/** Launch angles tried about the aim, deg: the best line does not hit the pocket's middle. */
const OFFSETS = [-0.5, -0.4, -0.3, -0.2, -0.1, 0, 0.1, 0.2, 0.3, 0.4, 0.5];

/** The launch angle is chosen on one sample of shots and scored on another, or the best would flatter itself. Always the same two. */
const SEARCH = { points: 160, seed: 2 } as const;
const SCORE = { points: 256, seed: 5 } as const;
let kept: readonly [search: Float64Array, score: Float64Array] | null = null;
function samples(): readonly [search: Float64Array, score: Float64Array] {
  kept ??= [spreadSample(SEARCH.points, SEARCH.seed), spreadSample(SCORE.points, SCORE.seed)];
  return kept;
}

/** The neighbourhood of the line as the bowler would re-aim it: same laydown, launch angle moved until the mean shot finds the pocket's middle. */
export function neighbourhood(thrower: Thrower, usual: HitQuality, line: Line, limits: Limits): Neighbourhood {
  const { laydownBoard } = line;
  const launchAngleDeg = reaimed(thrower, line, limits);
  const board = new Float64Array(NODES);
  const entry = new Float64Array(NODES);
  const breakpoint = new Float64Array(NODES);
  const run = emptyRun();
  for (let node = 0; node < NODES; node++) {
    scored(thrower, laydownBoard, launchAngleDeg + (node - MIDDLE) * NODE_STEP, run);
    board[node] = boardAtPins(run);
    entry[node] = entryDegOf(run);
    breakpoint[node] = xToBoard(run.breakX);
  }
  scored(thrower, laydownBoard + 1, launchAngleDeg, run);
  const [boardUp, entryUp] = [boardAtPins(run), entryDegOf(run)];
  scored(thrower, laydownBoard - 1, launchAngleDeg, run);
  const [boardDown, entryDown] = [boardAtPins(run), entryDegOf(run)];
  scored(thrower, laydownBoard, launchAngleDeg, run);
  const shift = qualityShift(usual, qualityOf(run, usual.massLb));
  const [boardHere, entryHere] = [board[MIDDLE], entry[MIDDLE]];
  const laydown = [
    (boardUp - boardDown) / 2,
    (boardUp + boardDown) / 2 - boardHere,
    (entryUp - entryDown) / 2,
    (entryUp + entryDown) / 2 - entryHere,
  ] as const;
  const response = responsesAt(thrower, laydownBoard, launchAngleDeg);
  return { launchAngleDeg, board, entry, breakpoint, shift, laydown, response };
}

/** None of these shots is drawn. */
function scored(thrower: Thrower, laydownBoard: number, launchAngleDeg: number, out: AveragedRun, off?: Off): void {
  throwBall(thrower, laydownBoard, launchAngleDeg, out, off, SCORED_STEP);
}

function reaimed(thrower: Thrower, line: Line, limits: Limits): number {
  const run = emptyRun();
  const miss = (launch: number) => {
    scored(thrower, line.laydownBoard, launch, run);
    return boardAtPins(run) - POCKET_BOARD;
  };
  const [least, most] = limits.launchAngleDeg;
  let [before, now] = [line.launchAngleDeg - 0.2, line.launchAngleDeg];
  let missBefore = miss(before);
  let missNow = miss(now);
  for (let step = 0; step < AIM_STEPS && Math.abs(missNow) > 0.1; step++) {
    const slope = (missNow - missBefore) / (now - before);
    // The board falls with launch outward; where noise or a cliff says otherwise, step by what is usual.
    const stride = Math.max(-AIM_STRIDE, Math.min(AIM_STRIDE, missNow / Math.max(0.3, -slope)));
    [before, missBefore] = [now, missNow];
    now = Math.min(most, Math.max(least, now + stride));
    if (now === before) break;
    missNow = miss(now);
  }
  return now;
}

/** Chance at a launch angle moved by `offset` from the neighbourhood's. */
export function chanceNearby(near: Neighbourhood, thrower: Thrower, carry: StrikeMap, offset: number, sample: Float64Array): number {
  const { spread } = thrower.bowler;
  const { board, entry, breakpoint, shift, laydown, response } = near;
  let strikes = 0;
  for (let at = 0; at < sample.length; at += VARIED) {
    const place = MIDDLE + (offset + sample[at] * spread.launchAngleDeg) / NODE_STEP;
    const node = Math.min(NODES - 2, Math.max(0, Math.floor(place)));
    const share = place - node;
    if (breakpoint[node] + (breakpoint[node + 1] - breakpoint[node]) * share < OFF_LANE_BOARD) continue;
    const boards = sample[at + 1] * spread.laydownBoards;
    let hitBoard = board[node] + (board[node + 1] - board[node]) * share + boards * (laydown[0] + boards * laydown[1]);
    let hitEntry = entry[node] + (entry[node + 1] - entry[node]) * share + boards * (laydown[2] + boards * laydown[3]);
    for (let varied = 0; varied < 3; varied++) {
      const z = sample[at + 2 + varied];
      hitBoard += z * (response[varied * 4] + z * response[varied * 4 + 1]);
      hitEntry += z * (response[varied * 4 + 2] + z * response[varied * 4 + 3]);
    }
    strikes += nudged(strikeAt(carry, hitBoard, hitEntry), shift);
  }
  return (strikes * VARIED) / sample.length;
}

/** One state of the lane with the line's neighbourhood on it. */
export interface LocalLane {
  readonly near: Neighbourhood;
  readonly thrower: Thrower;
}

/** The best mean chance over several lanes with one launch angle for all of them, within the limits: chosen on one sample, scored on the other. */
export function bestNearby(lanes: readonly LocalLane[], carry: StrikeMap, limits: Limits): number {
  const [search, score] = samples();
  const aim = lanes.reduce((sum, { near }) => sum + near.launchAngleDeg, 0) / lanes.length;
  let best = 0;
  let bestLaunch: number | null = null;
  for (const offset of OFFSETS) {
    const launch = aim + offset;
    if (launch < limits.launchAngleDeg[0] || launch > limits.launchAngleDeg[1]) continue;
    const chance = meanNearby(lanes, carry, limits, launch, search);
    if (chance > best) {
      best = chance;
      bestLaunch = launch;
    }
  }
  return bestLaunch === null ? 0 : meanNearby(lanes, carry, limits, bestLaunch, score);
}

function meanNearby(lanes: readonly LocalLane[], carry: StrikeMap, limits: Limits, launch: number, sample: Float64Array): number {
  let sum = 0;
  for (const { near, thrower } of lanes) {
    const offset = launch - near.launchAngleDeg;
    if (breakpointAt(near, offset) >= limits.breakpointBoard[0]) sum += chanceNearby(near, thrower, carry, offset, sample);
  }
  return sum / lanes.length;
}

function breakpointAt(near: Neighbourhood, offset: number): number {
  const place = MIDDLE + offset / NODE_STEP;
  const node = Math.min(NODES - 2, Math.max(0, Math.floor(place)));
  return near.breakpoint[node] + (near.breakpoint[node + 1] - near.breakpoint[node]) * (place - node);
}

const RESPONSES = 12;

/** [linear, quadratic] × [board, entry] for one standard deviation of speed, rev rate and rotation at one line. */
function responsesAt(thrower: Thrower, laydownBoard: number, launchAngleDeg: number): Float64Array {
  const response = new Float64Array(RESPONSES);
  const run = emptyRun();
  const at = (off?: Off) => {
    scored(thrower, laydownBoard, launchAngleDeg, run, off);
    return [boardAtPins(run), entryDegOf(run)] as const;
  };
  const [board, entry] = at();
  for (let varied = 0; varied < 3; varied++) {
    const off = (amount: number): Off => [varied === 0 ? amount : 0, varied === 1 ? amount : 0, varied === 2 ? amount : 0];
    const [boardUp, entryUp] = at(off(1));
    const [boardDown, entryDown] = at(off(-1));
    response[varied * 4] = (boardUp - boardDown) / 2;
    response[varied * 4 + 1] = (boardUp + boardDown) / 2 - board;
    response[varied * 4 + 2] = (entryUp - entryDown) / 2;
    response[varied * 4 + 3] = (entryUp + entryDown) / 2 - entry;
  }
  return response;
}
