import type { Hand } from "#engine/delivery/bowler";
import type { LaneFrame } from "./laneFrame.ts";
import type { Paint } from "./paint.ts";
import { el, pathOf } from "./svg.ts";

/** Somebody's mean path at a moment: boards from the hand's side at every second foot. */
export interface PathNow {
  readonly hand: Hand;
  readonly boards: readonly number[];
}

const FT_BETWEEN = 2;

/** Everybody's lines on a lane; the first is drawn strongest, and last, so that it lies on top. */
export function playedLines(paths: readonly PathNow[], frame: LaneFrame, paint: Paint): readonly string[] {
  return paths.map((path, nth) => playedLine(path, nth === 0, frame, paint)).reverse();
}

function playedLine({ hand, boards }: PathNow, isFirst: boolean, frame: LaneFrame, paint: Paint): string {
  const points = boards.map((board, i) => frame.fromRight(i * FT_BETWEEN, hand === "right" ? board : 40 - board));
  return el("path", {
    d: pathOf(points),
    fill: "none",
    stroke: isFirst ? paint.accent : paint.ink,
    "stroke-width": isFirst ? 2.2 : 0.9,
    ...(isFirst ? {} : { "stroke-opacity": 0.45 }),
  });
}
