import type { Spread } from "../delivery/bowler.ts";
import { shotKernel } from "../motion/manyShots.ts";
import { pinsAt, type StrikeMap, strikeAt } from "../pins/carry.ts";
import type { GridAxis, HitQuality } from "../pins/carryGrid.ts";
import type { Volley } from "./ground.ts";
import type { Limits } from "./question.ts";
import {
  type AtPlace,
  FINE_A_NODE_ACROSS,
  FINE_A_NODE_ROUND,
  finer,
  type NodeGrid,
  noneAlong,
  noOutcomes,
  raiseAcross,
  raiseAlong,
} from "./raised.ts";
import { MARGIN_SD, smear } from "./smear.ts";
import { NOWHERE, nudged, OFF_LANE_BOARD, type Off } from "./thrown.ts";
import { nearThePins, SCAN_EVERY, throwNodes } from "./thrownNodes.ts";

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

/** All signs of one standard deviation of speed, rev rate and rotation: the same means and variances as the bowler's own scatter. */
const DELIVERIES: readonly Off[] = [1, -1].flatMap((speed) =>
  [1, -1].flatMap((revs) => [1, -1].map((rotation): Off => [speed, revs, rotation])),
);

/** @param everywhere true throws every node, for who rarely strikes: four times the work, and pins besides strikes */
export function lineMap(volley: Volley, usual: HitQuality, strikes: StrikeMap, limits: Limits, everywhere = false): LineMap {
  const nodes = nodeGrid(limits, volley.bowler.spread);
  volley.layGrip(shotKernel().grip);
  const wanted = everywhere ? null : nearThePins(volley, usual, nodes);
  const map = emptyMap(nodes, everywhere);
  const { laydown, launch, chance, pins, board, entry, breakpoint } = map;
  const seen = new Uint8Array(chance.length);
  const score: AtPlace = (at, hitBoard, hitEntry, outermost, shift) => {
    seen[at]++;
    board[at] += hitBoard;
    entry[at] += hitEntry;
    breakpoint[at] += outermost;
    if (outermost < OFF_LANE_BOARD) return;
    chance[at] += nudged(strikeAt(strikes, hitBoard, hitEntry), shift);
    if (pins !== null) pins[at] += pinsAt(hitBoard, hitEntry);
  };
  const thrown = noOutcomes(nodes.laydown.count * nodes.launch.count);
  const along = noneAlong(nodes);
  for (const delivery of DELIVERIES) {
    throwNodes(volley, usual, nodes, wanted, delivery, thrown);
    raiseAlong(thrown, nodes, along);
    raiseAcross(along, nodes, score);
  }
  for (let at = 0; at < chance.length; at++) {
    const share = seen[at] === DELIVERIES.length ? 1 / DELIVERIES.length : 0;
    board[at] = share > 0 ? board[at] * share : NOWHERE;
    entry[at] *= share;
    breakpoint[at] = share > 0 ? breakpoint[at] * share : NOWHERE;
    chance[at] /= DELIVERIES.length;
    if (pins !== null) pins[at] /= DELIVERIES.length;
  }
  smear(chance, laydown, launch, volley.bowler.spread);
  if (pins !== null) smear(pins, laydown, launch, volley.bowler.spread);
  return map;
}

function emptyMap(nodes: NodeGrid, everywhere: boolean): LineMap {
  const [laydown, launch] = [finer(nodes.laydown, FINE_A_NODE_ACROSS), finer(nodes.launch, FINE_A_NODE_ROUND)];
  const numbers = () => new Float64Array(laydown.count * launch.count);
  const pins = everywhere ? numbers() : null;
  return { laydown, launch, chance: numbers(), pins, board: numbers(), entry: numbers(), breakpoint: numbers() };
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
