import type { Bowler } from "../delivery/bowler.ts";
import { release } from "../delivery/release.ts";
import { xToBoard } from "../lane/geometry.ts";
import { type AveragedRun, emptyRun, runAveraged } from "../motion/averaged.ts";
import type { Thrower } from "../motion/track.ts";
import { qualityShift, type StrikeMap, strikeAt } from "../pins/carry.ts";
import type { HitQuality } from "../pins/carryGrid.ts";
import { DEGREE, MPH } from "../units.ts";
import type { Limits } from "./question.ts";
import { VARIED } from "./spreadSample.ts";

/** A ball that does not reach the pins is put here, boards: far from every target, and finite. */
const NOWHERE = -40;

/** Runs the bowler's mean delivery, changed by so many standard deviations of speed, rev rate and rotation. */
export function throwBall(
  thrower: Thrower,
  laydownBoard: number,
  launchAngleDeg: number,
  out: AveragedRun,
  speedSd = 0,
  revSd = 0,
  rotationSd = 0,
): void {
  const { bowler, ball, friction } = thrower;
  const delivery = {
    speedMph: Math.max(1, bowler.speedMph + speedSd * bowler.spread.speedMph),
    revRateRpm: Math.max(0, bowler.revRateRpm + revSd * bowler.spread.revRateRpm),
    axisRotationDeg: bowler.axisRotationDeg + rotationSd * bowler.spread.axisRotationDeg,
    axisTiltDeg: bowler.axisTiltDeg,
  };
  runAveraged(ball, friction, release(delivery, { laydownBoard, launchAngleDeg }), 0, out);
}

export function boardAtPins(run: AveragedRun): number {
  return run.reached === 1 ? xToBoard(run.x) : NOWHERE;
}

export function entryDegOf(run: AveragedRun): number {
  return Math.atan2(-run.vx, run.vy) / DEGREE;
}

/** What the hit has besides place and angle. */
export function qualityOf(run: AveragedRun, massLb: number): HitQuality {
  return { speedMph: Math.hypot(run.vx, run.vy) / MPH, slipMps: Math.hypot(run.ux, run.uy), massLb };
}

/** An evenly spaced axis. */
export interface Axis {
  readonly from: number;
  readonly step: number;
  readonly count: number;
}

export interface MapGrain {
  readonly laydown: number;
  readonly launch: number;
  /** Every so many nodes of each axis the responses to speed, rev rate and rotation are taken. */
  readonly responseEvery: number;
}

export const FINE: MapGrain = { laydown: 1.5, launch: 0.25, responseEvery: 3 };
export const COARSE: MapGrain = { laydown: 3, launch: 0.5, responseEvery: 3 };

/**
 * Where every line ends: board at the pins, entry angle and breakpoint over laydown × launch, with linear and quadratic responses to the rest of
 * the spread. Launch and laydown noise only shift the line, so one map serves every line. Rows are laydowns.
 */
export interface OutcomeMap {
  readonly laydown: Axis;
  readonly launch: Axis;
  readonly board: Float64Array;
  readonly entry: Float64Array;
  readonly breakpoint: Float64Array;
  /** By how much speed and slip left move the log odds of a strike, against the quality that the strike map was made for. */
  readonly shift: Float64Array;
  readonly coarseLaydown: Axis;
  readonly coarseLaunch: Axis;
  /** Per coarse node: for board and entry, linear and quadratic response to one standard deviation of each of three deliveries. */
  readonly response: Float64Array;
}

const RESPONSES = 12;
/** Lines are held this far inside the map so that a bowler's own noise stays on it. */
const MARGIN_LAYDOWN = 1.5;
const MARGIN_LAUNCH = 1;

export function outcomeMap(thrower: Thrower, usual: HitQuality, limits: Limits, grain: MapGrain): OutcomeMap {
  const laydown = axisOver(
    limits.laydownBoard[0] - MARGIN_LAYDOWN,
    limits.laydownBoard[1] + MARGIN_LAYDOWN,
    grain.laydown,
    grain.responseEvery,
  );
  const launch = axisOver(
    limits.launchAngleDeg[0] - MARGIN_LAUNCH,
    limits.launchAngleDeg[1] + MARGIN_LAUNCH,
    grain.launch,
    grain.responseEvery,
  );
  const cells = laydown.count * launch.count;
  const [board, entry, breakpoint, shift] = Array.from({ length: 4 }, () => new Float64Array(cells));
  const run = emptyRun();
  for (let i = 0; i < laydown.count; i++) {
    for (let j = 0; j < launch.count; j++) {
      throwBall(thrower, laydown.from + i * laydown.step, launch.from + j * launch.step, run);
      const at = i * launch.count + j;
      board[at] = boardAtPins(run);
      entry[at] = entryDegOf(run);
      breakpoint[at] = xToBoard(run.breakX);
      shift[at] = qualityShift(usual, qualityOf(run, usual.massLb));
    }
  }
  const coarseLaydown = {
    from: laydown.from,
    step: laydown.step * grain.responseEvery,
    count: (laydown.count - 1) / grain.responseEvery + 1,
  };
  const coarseLaunch = { from: launch.from, step: launch.step * grain.responseEvery, count: (launch.count - 1) / grain.responseEvery + 1 };
  const response = responsesOver(thrower, coarseLaydown, coarseLaunch);
  return { laydown, launch, board, entry, breakpoint, shift, coarseLaydown, coarseLaunch, response };
}

/** An axis from `low` to at least `high` whose last node also belongs to the coarser axis. */
function axisOver(low: number, high: number, step: number, every: number): Axis {
  return { from: low, step, count: Math.ceil(Math.max(1, (high - low) / step) / every) * every + 1 };
}

function responsesOver(thrower: Thrower, laydown: Axis, launch: Axis): Float64Array {
  const response = new Float64Array(laydown.count * launch.count * RESPONSES);
  for (let i = 0; i < laydown.count; i++) {
    for (let j = 0; j < launch.count; j++) {
      responsesAt(thrower, laydown.from + i * laydown.step, launch.from + j * launch.step, response, (i * launch.count + j) * RESPONSES);
    }
  }
  return response;
}

/** Writes [linear, quadratic] × [board, entry] for speed, rev rate and rotation at one line. */
export function responsesAt(thrower: Thrower, laydownBoard: number, launchAngleDeg: number, into: Float64Array, offset: number): void {
  const run = emptyRun();
  throwBall(thrower, laydownBoard, launchAngleDeg, run);
  const [board, entry] = [boardAtPins(run), entryDegOf(run)];
  for (let varied = 0; varied < 3; varied++) {
    throwBall(thrower, laydownBoard, launchAngleDeg, run, ...sdOf(varied, 1));
    const [boardUp, entryUp] = [boardAtPins(run), entryDegOf(run)];
    throwBall(thrower, laydownBoard, launchAngleDeg, run, ...sdOf(varied, -1));
    const [boardDown, entryDown] = [boardAtPins(run), entryDegOf(run)];
    const at = offset + varied * 4;
    into[at] = (boardUp - boardDown) / 2;
    into[at + 1] = (boardUp + boardDown) / 2 - board;
    into[at + 2] = (entryUp - entryDown) / 2;
    into[at + 3] = (entryUp + entryDown) / 2 - entry;
  }
}

function sdOf(varied: number, amount: number): [number, number, number] {
  return [varied === 0 ? amount : 0, varied === 1 ? amount : 0, varied === 2 ? amount : 0];
}

/** A value of the map at a line, by straight lines between nodes. */
export function mapValue(map: OutcomeMap, values: Float64Array, laydownBoard: number, launchAngleDeg: number): number {
  const i = place(map.laydown, laydownBoard);
  const j = place(map.launch, launchAngleDeg);
  const [row, column] = [i | 0, j | 0];
  const at = row * map.launch.count + column;
  const near = values[at] + (values[at + 1] - values[at]) * (j - column);
  const over = at + map.launch.count;
  const far = values[over] + (values[over + 1] - values[over]) * (j - column);
  return near + (far - near) * (i - row);
}

function place(axis: Axis, value: number): number {
  return Math.min(axis.count - 1.000001, Math.max(0, (value - axis.from) / axis.step));
}

/** The responses at a line: nearest coarse nodes, straight lines between. */
function responseAtLine(map: OutcomeMap, laydownBoard: number, launchAngleDeg: number, into: Float64Array): void {
  const i = place(map.coarseLaydown, laydownBoard);
  const j = place(map.coarseLaunch, launchAngleDeg);
  const [row, column] = [i | 0, j | 0];
  const [down, right] = [i - row, j - column];
  const at = (row * map.coarseLaunch.count + column) * RESPONSES;
  const over = at + map.coarseLaunch.count * RESPONSES;
  for (let r = 0; r < RESPONSES; r++) {
    const near = map.response[at + r] + (map.response[at + RESPONSES + r] - map.response[at + r]) * right;
    const far = map.response[over + r] + (map.response[over + RESPONSES + r] - map.response[over + r]) * right;
    into[r] = near + (far - near) * down;
  }
}

/**
 * Share of a bowler's shots on a line that strike, 0–1.
 *
 * @param sample standard normal deviates from `spreadSample`.
 */
export function chanceOnLine(
  map: OutcomeMap,
  bowler: Bowler,
  carry: StrikeMap,
  laydownBoard: number,
  launchAngleDeg: number,
  sample: Float64Array,
): number {
  const response = new Float64Array(RESPONSES);
  responseAtLine(map, laydownBoard, launchAngleDeg, response);
  const { spread } = bowler;
  const shift = mapValue(map, map.shift, laydownBoard, launchAngleDeg);
  let strikes = 0;
  for (let at = 0; at < sample.length; at += VARIED) {
    const laydown = laydownBoard + sample[at + 1] * spread.laydownBoards;
    const launch = launchAngleDeg + sample[at] * spread.launchAngleDeg;
    if (mapValue(map, map.breakpoint, laydown, launch) < OFF_LANE_BOARD) continue;
    let board = mapValue(map, map.board, laydown, launch);
    let entry = mapValue(map, map.entry, laydown, launch);
    for (let varied = 0; varied < 3; varied++) {
      const z = sample[at + 2 + varied];
      board += z * (response[varied * 4] + z * response[varied * 4 + 1]);
      entry += z * (response[varied * 4 + 2] + z * response[varied * 4 + 3]);
    }
    strikes += nudged(strikeAt(carry, board, entry), shift);
  }
  return (strikes * VARIED) / sample.length;
}

/**
 * A chance whose log odds move by a little, without the exponential: to second order, error below 0.005 for moves up to 0.5.
 */
export function nudged(chance: number, shift: number): number {
  const room = chance * (1 - chance);
  return Math.min(1, Math.max(0, chance + shift * room * (1 + shift * (0.5 - chance))));
}

/** A ball whose centre passes the outer edge of board 1 has left the lane. */
export const OFF_LANE_BOARD = 0.5;
