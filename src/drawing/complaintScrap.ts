import type { Course, CoursePoint } from "#engine/motion/course";
import { courseLine } from "./courseLine.ts";
import { laneFrame } from "./laneFrame.ts";
import { PAGE_PAINT } from "./paint.ts";
import { el, pathOf, picture } from "./svg.ts";

/** What is complained of at the counter, each with a scrap of chart: signs, not computed. */
export type ComplaintSign = "hooksEarlyHitsWeak" | "skidsPast" | "hooksLess" | "deflects" | "scratched" | "justRefresh";

const WIDTH = 96;
const HEIGHT = 54;
/** The bowler's half of a lane fills the height, and a little beyond its middle: the pins beside the pocket stand whole. */
const FRAME = laneFrame("lying", "right", { left: 1, top: -31, width: WIDTH - 10, height: 84 });
const OIL_TO_FT = 38;
const START_BOARD = 21;

interface Way {
  readonly hookFt: number;
  readonly rollFt: number;
  readonly breakBoard: number;
  readonly endBoard: number;
}

const WAYS = {
  hooksEarlyHitsWeak: { hookFt: 24, rollFt: 42, breakBoard: 8, endBoard: 23 },
  skidsPast: { hookFt: 47, rollFt: 57, breakBoard: 5, endBoard: 7.5 },
  usual: { hookFt: 38, rollFt: 52, breakBoard: 6.5, endBoard: 17.5 },
  hooksLess: { hookFt: 38, rollFt: 56, breakBoard: 6.5, endBoard: 11.5 },
} as const satisfies Record<string, Way>;

/** A course through the places that a way names: straight in skid, bending in hook, straight again in roll. */
function courseOf({ hookFt, rollFt, breakBoard, endBoard }: Way): Course {
  const at = (yFt: number): number => {
    if (yFt <= hookFt) return START_BOARD + ((breakBoard - START_BOARD) * yFt) / hookFt;
    const share = (yFt - hookFt) / (60 - hookFt);
    const outward = ((breakBoard - START_BOARD) / hookFt) * (60 - hookFt);
    // A parabola that leaves along the skid and ends at the pins.
    return breakBoard + outward * share + (endBoard - breakBoard - outward) * share ** 2;
  };
  const points = Array.from({ length: 31 }, (_, i): CoursePoint => ({ yFt: 2 * i, board: at(2 * i), phase: "skid" }));
  const breakpoint = { board: breakBoard, yFt: hookFt };
  return { hand: "right", points, hookStartFt: hookFt, rollStartFt: rollFt, breakpoint, boardAtPins: endBoard, entryAngleDeg: null };
}

/** The small picture beside a complaint. @param words what it shows, for those who do not see it */
export function complaintScrap(id: string, sign: ComplaintSign, words: string): string {
  const paint = PAGE_PAINT;
  const box = { width: WIDTH, height: HEIGHT };
  const drawn = sign === "scratched" || sign === "justRefresh" ? ballSign(sign) : laneSign(sign);
  return picture(box, { id, title: words, description: words }, el("g", { fill: "none", stroke: paint.ink }, ...drawn));
}

function laneSign(sign: "hooksEarlyHitsWeak" | "skidsPast" | "hooksLess" | "deflects"): readonly string[] {
  const paint = PAGE_PAINT;
  const [oilEnd] = FRAME.fromRight(OIL_TO_FT, 1);
  const way = sign === "deflects" ? WAYS.usual : WAYS[sign];
  const before = courseOf(WAYS.usual).points.filter(({ yFt }) => yFt >= WAYS.usual.hookFt);
  return [
    el("rect", { x: 1, y: 1, width: FRAME.width, height: HEIGHT - 2, fill: paint.lane, stroke: paint.hair }),
    el("rect", { x: 1, y: 1, width: oilEnd - 1, height: HEIGHT - 2, fill: paint.oil, "fill-opacity": 0.12, stroke: "none" }),
    ...[20, 14.4].map((board) => pier(board)),
    sign === "hooksLess"
      ? el("path", {
          d: pathOf(before.map(({ yFt, board }) => FRAME.fromHand(yFt, board))),
          stroke: paint.faint,
          "stroke-dasharray": "3 2.5",
        })
      : "",
    courseLine(courseOf(way), "today", FRAME, paint),
    ...(sign === "deflects" ? [23, 6].map((board) => standing(board)) : []),
  ];
}

/** A pin as a pier, of its true place across. */
function pier(board: number): string {
  const [x, y] = FRAME.fromRight(61, board);
  return el("rect", { x: x - 2.5, y: y - 6, width: 5, height: 12, rx: 2.5, fill: PAGE_PAINT.lane, stroke: PAGE_PAINT.ink });
}

/** A pin that is left. */
function standing(board: number): string {
  const [x, y] = FRAME.fromRight(62.6, board);
  return el("circle", { cx: x, cy: y, r: 3, fill: PAGE_PAINT.ink, stroke: "none" });
}

function ballSign(sign: "scratched" | "justRefresh"): readonly string[] {
  const [x, y] = [WIDTH / 2, HEIGHT / 2];
  const round = { "stroke-width": 2, "stroke-linecap": "round", "stroke-linejoin": "round" };
  const mark =
    sign === "scratched"
      ? pathOf([
          [x - 9, y - 6],
          [x - 1, y + 1],
          [x - 3, y + 4],
          [x + 8, y + 10],
        ])
      : pathOf([
          [x, y - 13],
          [x, y],
          [x + 8, y + 6],
        ]);
  return [el("circle", { cx: x, cy: y, r: 20, fill: PAGE_PAINT.lane }), el("path", { ...round, d: mark })];
}
