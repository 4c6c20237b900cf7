import type { Bowler, Line } from "./bowler.ts";

/** Boards from one edge of the lane and from the other add up to this. */
const BOTH_EDGES = 40;

/** A board counted from the lane's other edge. */
export function fromOtherEdge(board: number): number {
  return BOTH_EDGES - board;
}

/** Whether the axis is turned the other way, so that the ball hooks towards the bowler's own side. */
export function turnsBack({ axisRotationDeg }: Pick<Bowler, "axisRotationDeg">): boolean {
  return axisRotationDeg < 0;
}

/**
 * A backup ball as what it is on the lane: the other hand's hook, in the mirror. Its own inverse. The vertical part of the spin turns round as the
 * horizontal one does.
 */
export function inMirror({ isBackup, ...bowler }: Bowler): Bowler {
  return {
    ...bowler,
    hand: bowler.hand === "right" ? "left" : "right",
    axisRotationDeg: -bowler.axisRotationDeg,
    axisTiltDeg: 0 - bowler.axisTiltDeg,
    ...(isBackup === true ? {} : { isBackup: true }),
  };
}

/** A line as the other hand counts it. */
export function lineInMirror({ laydownBoard, launchAngleDeg }: Line): Line {
  return { laydownBoard: fromOtherEdge(laydownBoard), launchAngleDeg: 0 - launchAngleDeg };
}
