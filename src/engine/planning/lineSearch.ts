import type { Bowler, Line } from "../delivery/bowler.ts";
import { POCKET_BOARD } from "../lane/geometry.ts";
import type { StrikeMap } from "../pins/carry.ts";
import { chanceOnLine, mapValue, type OutcomeMap } from "./outcomeMap.ts";
import type { Limits } from "./question.ts";

export interface RatedLine {
  readonly line: Line;
  readonly chance: number;
}

/** Lines whose mean shot ends further than this from the pocket are not worth scoring, boards. */
const WORTH_SCORING = 3;
const LAYDOWN_STEP = 1;
const LAUNCH_STEP = 0.1;

/**
 * The line with the best mean chance over several maps (the lane now and a little later), among those the bowler can play. All whole boards by tenths
 * of a degree near the pocket are scored on the search sample. Never by solving for the pocket's middle: that costs some points against the joint optimum.
 *
 * @returns null if no line inside the limits brings the mean shot near the pocket.
 */
export function bestLine(
  maps: readonly OutcomeMap[],
  bowler: Bowler,
  carry: StrikeMap,
  limits: Limits,
  sample: Float64Array,
): RatedLine | null {
  let best: RatedLine | null = null;
  for (let laydownBoard = limits.laydownBoard[0]; laydownBoard <= limits.laydownBoard[1] + 1e-9; laydownBoard += LAYDOWN_STEP) {
    for (let launch = limits.launchAngleDeg[0]; launch <= limits.launchAngleDeg[1] + 1e-9; launch += LAUNCH_STEP) {
      const launchAngleDeg = Math.round(launch * 10) / 10;
      if (!playable(maps[0], limits, laydownBoard, launchAngleDeg)) continue;
      if (!maps.every((map) => Math.abs(mapValue(map, map.board, laydownBoard, launchAngleDeg) - POCKET_BOARD) < WORTH_SCORING)) continue;
      const chance = meanChance(maps, bowler, carry, { laydownBoard, launchAngleDeg }, sample);
      if (best === null || chance > best.chance) best = { line: { laydownBoard, launchAngleDeg }, chance };
    }
  }
  return best;
}

export function meanChance(maps: readonly OutcomeMap[], bowler: Bowler, carry: StrikeMap, line: Line, sample: Float64Array): number {
  return maps.reduce((sum, map) => sum + chanceOnLine(map, bowler, carry, line.laydownBoard, line.launchAngleDeg, sample), 0) / maps.length;
}

function playable(map: OutcomeMap, limits: Limits, laydownBoard: number, launchAngleDeg: number): boolean {
  const breakpoint = mapValue(map, map.breakpoint, laydownBoard, launchAngleDeg);
  return breakpoint >= limits.breakpointBoard[0] && breakpoint <= limits.breakpointBoard[1];
}
