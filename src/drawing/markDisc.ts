import { MEASURED_MARKS } from "#words/en/rooms/measuring";
import { PAGE_PAINT, type Paint, SANS } from "./paint.ts";
import { el, picture, textEl } from "./svg.ts";

/** A mark on the ball as a camera behind the bowler sees it, in radii of the ball from the middle of its disc. */
export interface DiscMark {
  readonly right: number;
  readonly up: number;
}

const SIZE = 200;
const RADIUS = 86;
const MIDDLE = SIZE / 2;

/**
 * The ball's disc in the picture with a mark where it was read, numbered in the order of the pictures and joined by a line; a mark of known place is a ring.
 *
 * @param marks beyond the rim they are drawn on it
 */
export function markDisc(marks: readonly DiscMark[], known: readonly DiscMark[], id: string, paint: Paint = PAGE_PAINT): string {
  const places = marks.map(placeOf);
  return picture(
    { width: SIZE, height: SIZE },
    { id, title: MEASURED_MARKS.title, description: MEASURED_MARKS.description(marks.length, known.length) },
    el("circle", { cx: MIDDLE, cy: MIDDLE, r: RADIUS, fill: paint.lane, stroke: paint.ink, "stroke-width": 1.4 }),
    el("path", {
      d: `M${MIDDLE - RADIUS},${MIDDLE}L${MIDDLE + RADIUS},${MIDDLE}M${MIDDLE},${MIDDLE - RADIUS}L${MIDDLE},${MIDDLE + RADIUS}`,
      stroke: paint.hair,
      "stroke-width": 1,
    }),
    el("circle", { cx: MIDDLE, cy: MIDDLE, r: RADIUS / 2, fill: "none", stroke: paint.hair }),
    edgeWord(MEASURED_MARKS.right, MIDDLE + RADIUS - 4, MIDDLE - 5, "end", paint),
    edgeWord(MEASURED_MARKS.up, MIDDLE + 5, MIDDLE - RADIUS + 14, "start", paint),
    el("polyline", {
      points: places.map(([x, y]) => `${x.toFixed(1)},${y.toFixed(1)}`).join(" "),
      fill: "none",
      stroke: paint.accent,
      "stroke-width": 1.4,
    }),
    ...places.map(([x, y], i) => numbered(x, y, i + 1, paint)),
    ...known.map((mark) => {
      const [cx, cy] = placeOf(mark);
      return el("circle", { cx, cy, r: 6, fill: "none", stroke: paint.ink, "stroke-width": 1.6, "stroke-dasharray": "3 2" });
    }),
  );
}

function placeOf({ right, up }: DiscMark): readonly [number, number] {
  const beyond = Math.max(1, Math.hypot(right, up));
  return [MIDDLE + (RADIUS * right) / beyond, MIDDLE - (RADIUS * up) / beyond];
}

function numbered(x: number, y: number, number: number, paint: Paint): string {
  const words = { "text-anchor": "middle", "font-family": SANS, "font-size": 9.5, "font-weight": 600, fill: paint.paper } as const;
  return el("g", {}, el("circle", { cx: x, cy: y, r: 7.5, fill: paint.accent }), textEl(String(number), { ...words, x, y: y + 3.4 }));
}

function edgeWord(text: string, x: number, y: number, anchor: "start" | "end", paint: Paint): string {
  return textEl(text, { x, y, "text-anchor": anchor, "font-family": SANS, "font-size": 10.5, fill: paint.faint });
}
