import { SIDE_AXES, type SideId } from "#engine/surface/padWork/sides";
import { cross, dot, type Vector } from "#engine/vector";
import { BENCH } from "#words/en/rooms/bench";
import { PAGE_PAINT, type Paint } from "./paint.ts";
import { el, picture } from "./svg.ts";

const SIZE = 220;
const RADIUS = 96;
/** Width of a hole over the ball's radius. */
export const HOLE = 0.09;
/** Where the holes lie, as seen when the grip looks at you: two fingers above, the thumb below. */
export const HOLES: readonly Vector[] = [
  [-0.15, 0.2, 0.97],
  [0.15, 0.2, 0.97],
  [0, -0.3, 0.95],
];
/** What is up in the picture when a side looks at you. */
const UP: Readonly<Record<SideId, Vector>> = {
  grip: [0, 1, 0],
  opposite: [0, 1, 0],
  left: [0, 1, 0],
  right: [0, 1, 0],
  fingers: [0, 0, -1],
  thumb: [0, 0, 1],
};

/** The ball as it is put down for one side: that side faces up, the holes show where the grip has gone. */
export function sideDiagram(side: SideId, paint: Paint = PAGE_PAINT, id = "side"): string {
  const facing = SIDE_AXES[side];
  const up = UP[side];
  const right = cross(up, facing);
  const middle = SIZE / 2;
  const holes = HOLES.map((hole) => {
    const length = Math.sqrt(dot(hole, hole));
    const [x, y, z] = [dot(hole, right) / length, dot(hole, up) / length, dot(hole, facing) / length];
    const isSeen = z > -0.15;
    return el("ellipse", {
      cx: middle + RADIUS * x,
      cy: middle - RADIUS * y,
      rx: RADIUS * HOLE * Math.max(0.35, Math.abs(z)),
      ry: RADIUS * HOLE,
      fill: isSeen ? paint.ink : "none",
      stroke: paint.ink,
      "stroke-width": 1.5,
      "stroke-dasharray": isSeen ? undefined : "3 4",
    });
  });
  return picture(
    { width: SIZE, height: SIZE },
    { id, title: BENCH.sideTitle(side), description: BENCH.sideDescription(side) },
    el("circle", { cx: middle, cy: middle, r: RADIUS, fill: paint.lane, stroke: paint.ink, "stroke-width": 2 }),
    // Where the pad goes: the middle of the side that faces you.
    el("circle", { cx: middle, cy: middle, r: RADIUS * 0.62, fill: paint.accent, "fill-opacity": 0.12, stroke: paint.accent }),
    ...holes,
  );
}
