import type { Finish } from "#engine/surface/finish";
import { SIDE_AXES, type SideId } from "#engine/surface/padWork/sides";
import { cross, dot, type Vector } from "#engine/vector";
import { SIDE_LABELS } from "#words/en/padWork";
import { BENCH } from "#words/en/rooms/bench";
import { PAGE_PAINT, type Paint, SANS } from "./paint.ts";
import { el, picture, round, textEl } from "./svg.ts";
import { finishTexture } from "./texture.ts";

const [WIDTH, HEIGHT] = [720, 560];
const [X, Y] = [WIDTH / 2, HEIGHT / 2];
const RADIUS = 176;
/** The pad, over the ball's radius. */
const PAD = 0.62;
const RING = { radius: 222, width: 26, half: 26, name: 248 };
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
/** Where the sides stand on the ring, degrees from the top, clockwise: always the same, however the ball lies. */
const AT: Readonly<Record<SideId, number>> = { fingers: 0, right: 60, grip: 120, thumb: 180, opposite: 240, left: 300 };

export interface SideDiagram {
  readonly side: SideId;
  /** Sides of this step, and those of them that are done. */
  readonly sides: readonly SideId[];
  readonly done: readonly SideId[];
  /** How far this side is, 0 to 1. */
  readonly share: number;
  /** What is on the ball, and what the pad leaves; null where nobody knows, or it has no number. */
  readonly before: Finish | null;
  readonly after: Finish | null;
}

/** The ball as it is put down for one side, a dashed ring where the pad goes, the new texture sweeping in; around it the six sides of this ball in this step. */
export function sideDiagram(input: SideDiagram, paint: Paint = PAGE_PAINT, id = "side"): string {
  const { side, before, after, share } = input;
  const ball = { cx: X, cy: Y, r: RADIUS };
  return picture(
    { width: WIDTH, height: HEIGHT },
    { id, title: BENCH.sideTitle(side), description: BENCH.sideDescription(side) },
    el(
      "defs",
      {},
      ...(before === null ? [] : [finishTexture(`${id}-before`, before, undefined, BALL_PAINT)]),
      ...(after === null ? [] : [finishTexture(`${id}-after`, after, undefined, BALL_PAINT)]),
      el("clipPath", { id: `${id}-pad` }, el("circle", { ...ball, r: RADIUS * PAD })),
    ),
    ...Object.keys(AT).flatMap((one) => segment(one as SideId, input, paint)),
    el("circle", { ...ball, fill: BALL_PAINT.lane, stroke: paint.ink, "stroke-width": 2 }),
    ...(before === null ? [] : [coarse(el("circle", { r: RADIUS / GRAIN, fill: `url(#${id}-before)` }))]),
    ...(after === null || share <= 0 ? [] : [swept(share, `${id}-pad`, `${id}-after`)]),
    el("circle", { ...ball, r: RADIUS * PAD, fill: "none", stroke: paint.accent, "stroke-width": 3, "stroke-dasharray": "9 7" }),
    ...holesOn(side),
  );
}

/** The ball itself is light whatever the room's light is. */
const BALL_PAINT: Paint = { ...PAGE_PAINT, lane: "#ece6d8", ink: "#1c2730", shine: "#ffffff" };

/** What the pad has gone over, as the hand of a clock would sweep it. */
function swept(share: number, clip: string, fill: string): string {
  const wide = Math.min(0.9999, share);
  const [x, y] = pointAt(360 * wide, RADIUS);
  const large = wide > 0.5 ? 1 : 0;
  const r = RADIUS / GRAIN;
  const d = `M0,0L0,${-r}A${r},${r} 0 ${large} 1 ${round((x - X) / GRAIN)},${round((y - Y) / GRAIN)}Z`;
  return el(
    "g",
    { "clip-path": `url(#${clip})` },
    coarse(el("path", { d, fill: BALL_PAINT.lane }), el("path", { d, fill: `url(#${fill})` })),
  );
}

/** Grains are drawn so many times as large as on a swatch: they are looked at from arm's length. */
const GRAIN = 2.4;

function coarse(...children: readonly string[]): string {
  return el("g", { transform: `translate(${X} ${Y}) scale(${GRAIN})` }, ...children);
}

function segment(one: SideId, { side, sides, done, share }: SideDiagram, paint: Paint): string[] {
  if (!sides.includes(one)) return [];
  const [from, to] = [AT[one] - RING.half, AT[one] + RING.half];
  const isDone = done.includes(one);
  const arc = (start: number, end: number, stroke: string, opacity: number) =>
    el("path", { d: arcOf(start, end), fill: "none", stroke, "stroke-opacity": opacity, "stroke-width": RING.width });
  const [x, y] = pointAt(AT[one], RING.name);
  const anchor = Math.abs(x - X) < 20 ? "middle" : x < X ? "end" : "start";
  const isAt = one === side && !isDone;
  return [
    arc(from, to, isDone ? paint.ink : isAt ? paint.accent : paint.hair, isAt ? 0.45 : 1),
    ...(isAt && share > 0 ? [arc(from, from + (to - from) * Math.min(1, share), paint.accent, 1)] : []),
    textEl(isDone ? `${SIDE_LABELS[one]} ✓` : SIDE_LABELS[one], {
      x,
      y: y + (AT[one] === 0 ? -2 : AT[one] === 180 ? 16 : 6),
      "text-anchor": anchor,
      "font-family": SANS,
      "font-size": 20,
      "font-weight": isAt ? 600 : 400,
      fill: isAt ? paint.accent : isDone ? paint.ink : paint.faint,
    }),
  ];
}

function pointAt(deg: number, radius: number): readonly [number, number] {
  const turn = (deg * Math.PI) / 180;
  return [X + radius * Math.sin(turn), Y - radius * Math.cos(turn)];
}

function arcOf(from: number, to: number): string {
  const [a, b] = [pointAt(from, RING.radius), pointAt(to, RING.radius)];
  return `M${round(a[0])},${round(a[1])}A${RING.radius},${RING.radius} 0 0 1 ${round(b[0])},${round(b[1])}`;
}

/** Where the holes lie now: those out of sight are dotted. */
function holesOn(side: SideId): string[] {
  const facing = SIDE_AXES[side];
  const up = UP[side];
  const right = cross(up, facing);
  return HOLES.map((hole) => {
    const length = Math.sqrt(dot(hole, hole));
    const [x, y, z] = [dot(hole, right) / length, dot(hole, up) / length, dot(hole, facing) / length];
    const isSeen = z > -0.15;
    return el("ellipse", {
      cx: X + RADIUS * x,
      cy: Y - RADIUS * y,
      rx: RADIUS * HOLE * Math.max(0.35, Math.abs(z)),
      ry: RADIUS * HOLE,
      fill: isSeen ? BALL_PAINT.ink : "none",
      stroke: BALL_PAINT.ink,
      "stroke-width": 1.5,
      "stroke-dasharray": isSeen ? undefined : "3 4",
    });
  });
}
