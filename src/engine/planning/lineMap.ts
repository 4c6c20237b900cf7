import type { Spread } from "../delivery/bowler.ts";
import { shotKernel } from "../motion/manyShots.ts";
import { pinsAt, type StrikeMap, strikeAt } from "../pins/carry.ts";
import type { GridAxis, HitQuality } from "../pins/carryGrid.ts";
import type { Volley } from "./ground.ts";
import type { Limits } from "./question.ts";
import {
  FINE_A_NODE_ACROSS,
  FINE_A_NODE_ROUND,
  finer,
  type NodeGrid,
  type Outcomes,
  raiseAcross,
  raiseAlong,
  roomFor,
  TOLD,
  TOLD_DELIVERIES,
  TOLD_NUMBERS,
} from "./raised.ts";
import { MARGIN_SD, smear } from "./smear.ts";
import { NOWHERE, nudged, OFF_LANE_BOARD } from "./thrown.ts";
import { SCAN_EVERY, throwNodes } from "./thrownNodes.ts";

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

/** Nodes that are thrown. */
const NODE_BOARDS = 2;
const NODE_DEGREES = 0.3;

/** @param everywhere true throws every node, for who rarely strikes: four times the work, and pins besides strikes */
export function lineMap(volley: Volley, usual: HitQuality, strikes: StrikeMap, limits: Limits, everywhere = false): LineMap {
  const nodes = nodeGrid(limits, volley.bowler.spread);
  volley.layGrip(shotKernel().grip);
  const thrown = throwNodes(volley, usual, nodes, everywhere);
  const map = emptyMap(nodes, everywhere);
  const { laydown, launch, chance, pins } = map;
  const along = roomFor("along", nodes.laydown.count * launch.count);
  raiseAlong(thrown, nodes, along);
  const line = roomFor("line", launch.count);
  for (let row = 0; row < laydown.count; row++) {
    raiseAcross(along, nodes, Math.floor(row / FINE_A_NODE_ACROSS), row % FINE_A_NODE_ACROSS, line);
    scoreLine(line, strikes, map, row * launch.count);
  }
  smear(chance, laydown, launch, volley.bowler.spread);
  if (pins !== null) smear(pins, laydown, launch, volley.bowler.spread);
  return map;
}

/** What comes of one row of the fine grid: the mean over the deliveries. */
function scoreLine({ isThere, told }: Outcomes, strikes: StrikeMap, map: LineMap, first: number): void {
  const { chance, pins } = map;
  for (let column = 0; column < isThere.length; column++) {
    if (isThere[column] === 0) continue;
    const from = TOLD_NUMBERS * column;
    let struck = 0;
    let down = 0;
    let board = 0;
    let entry = 0;
    let breakpoint = 0;
    for (let n = from; n < from + TOLD_DELIVERIES; n++) {
      const hitBoard = told[n + TOLD.board];
      const hitEntry = told[n + TOLD.entry];
      const outermost = told[n + TOLD.breakpoint];
      board += hitBoard;
      entry += hitEntry;
      breakpoint += outermost;
      if (outermost < OFF_LANE_BOARD) continue;
      struck += nudged(strikeAt(strikes, hitBoard, hitEntry), told[n + TOLD.shift]);
      if (pins !== null) down += pinsAt(hitBoard, hitEntry);
    }
    const at = first + column;
    chance[at] = struck / TOLD_DELIVERIES;
    if (pins !== null) pins[at] = down / TOLD_DELIVERIES;
    map.board[at] = board / TOLD_DELIVERIES;
    map.entry[at] = entry / TOLD_DELIVERIES;
    map.breakpoint[at] = breakpoint / TOLD_DELIVERIES;
  }
}

function emptyMap(nodes: NodeGrid, everywhere: boolean): LineMap {
  const [laydown, launch] = [finer(nodes.laydown, FINE_A_NODE_ACROSS), finer(nodes.launch, FINE_A_NODE_ROUND)];
  const numbers = () => new Float64Array(laydown.count * launch.count);
  const nowhere = () => numbers().fill(NOWHERE);
  const pins = everywhere ? numbers() : null;
  return { laydown, launch, chance: numbers(), pins, board: nowhere(), entry: numbers(), breakpoint: nowhere() };
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
