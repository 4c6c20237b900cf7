import { scaleLinear } from "d3-scale";
import type { Hand } from "#engine/delivery/bowler";
import { parseFinish } from "#engine/surface/finish";
import { CARE_CARD } from "#words/en/rooms/careCard";
import { FILE_PAINT, type Paint, SANS } from "./paint.ts";
import { el, type Point, pathOf, picture, textEl } from "./svg.ts";
import { finishTexture, texturedBall } from "./texture.ts";

interface FanCourse {
  readonly hookStartFt: number | null;
  readonly rollStartFt: number | null;
  readonly points: readonly Point[];
}

export interface CareFanInput {
  readonly hand: Hand;
  readonly from: string;
  readonly to: string;
  readonly oilFt: number | null;
  readonly was: FanCourse;
  readonly now: FanCourse;
  /** What stands beside the new course: "now, 4 right". */
  readonly nowName: string;
}

const [WIDTH, HEIGHT] = [470, 150];
const BOX = { left: 2, right: 440, top: 4, bottom: 122 };
const TO_FT = 62.5;
/** The pins of the bowler's half: feet from the foul line and boards from the hand's side (a pin every 12 in, rows 10.39 in apart: the game's own specification). */
const PINS: readonly Point[] = [
  [60, 20],
  [60.87, 14.36],
  [61.73, 8.73],
];
const PIN_BOARDS = 4.75 / (41.5 / 39);

/** The bowler's half of the lane with two courses, before and now, as small as a card needs it: fine dots in skid, a heavy line in hook, a fine line in roll. */
export function careFan(input: CareFanInput, paint: Paint = FILE_PAINT, id = "fan"): string {
  const { was, now, hand, oilFt } = input;
  const boards = [...was.points, ...now.points].map(([, board]) => board);
  const range = [Math.min(2, ...boards) - 1, Math.max(23, ...boards) + 2];
  const x = scaleLinear([0, TO_FT], [BOX.left, BOX.right]);
  // A right-hander's first board lies below, a left-hander's above, as they see it from the foul line.
  const y = scaleLinear(range, hand === "right" ? [BOX.bottom, BOX.top] : [BOX.top, BOX.bottom]);
  const place = ([ft, board]: Point): Point => [x(ft), y(board)];
  return picture(
    { width: WIDTH, height: HEIGHT },
    { id, title: CARE_CARD.fanTitle, description: CARE_CARD.fanDescription(was.hookStartFt, now.hookStartFt) },
    el(
      "defs",
      {},
      finishTexture(`${id}-was`, parseFinish(input.from), undefined, paint),
      finishTexture(`${id}-now`, parseFinish(input.to), undefined, paint),
    ),
    ...oil(oilFt, x, paint),
    el("rect", { x: BOX.left, y: BOX.top, width: BOX.right - BOX.left, height: BOX.bottom - BOX.top, fill: "none", stroke: paint.ink }),
    ...PINS.map(([ft, board]) => {
      const half = (Math.abs(y(1) - y(0)) * PIN_BOARDS) / 2;
      return el("rect", { x: x(ft) - 4, y: y(board) - half, width: 8, height: 2 * half, rx: 4, fill: paint.lane, stroke: paint.ink });
    }),
    ...course(was, place, paint.ink, 0.75),
    ...course(now, place, paint.accent, 1),
    ...buoy(was, place, `${id}-was`, input.from, CARE_CARD.was, -1, paint),
    ...buoy(now, place, `${id}-now`, input.to, input.nowName, 1, paint),
  );
}

function oil(oilFt: number | null, x: (ft: number) => number, paint: Paint): string[] {
  if (oilFt === null) return [];
  const width = x(oilFt) - BOX.left;
  return [
    el("rect", { x: BOX.left, y: BOX.top, width, height: BOX.bottom - BOX.top, fill: paint.oil, "fill-opacity": 0.13 }),
    textEl(CARE_CARD.oilEnds, {
      x: x(oilFt),
      y: BOX.bottom + 18,
      "text-anchor": "middle",
      "font-family": SANS,
      "font-size": 13,
      fill: paint.faint,
    }),
  ];
}

function course({ points, hookStartFt, rollStartFt }: FanCourse, place: (point: Point) => Point, stroke: string, weight: number): string[] {
  const end = Number.POSITIVE_INFINITY;
  const hook = hookStartFt ?? end;
  const roll = Math.max(hook, rollStartFt ?? end);
  const line = (from: number, to: number, more: Record<string, string | number>) => {
    const shown = between(points, from, to);
    return shown.length < 2 ? [] : [el("path", { d: pathOf(shown.map(place)), fill: "none", stroke, ...more })];
  };
  return [
    ...line(0, hook, { "stroke-width": 2.4 * weight, "stroke-dasharray": "0.1 5", "stroke-linecap": "round" }),
    ...line(hook, roll, { "stroke-width": 4 * weight }),
    ...line(roll, end, { "stroke-width": 1.6 * weight }),
  ];
}

/** The part of a course between two distances, with its places at both. */
function between(points: readonly Point[], from: number, to: number): Point[] {
  const last = points[points.length - 1][0];
  if (from >= last) return [];
  const ends = [Math.max(from, points[0][0]), Math.min(to, last)].map((ft): Point => [ft, boardAt(points, ft)]);
  return [ends[0], ...points.filter(([ft]) => ft > ends[0][0] && ft < ends[1][0]), ends[1]];
}

/** Board of a course at a distance, between its places. */
function boardAt(points: readonly Point[], ft: number): number {
  const after = Math.max(
    1,
    points.findIndex(([at]) => at >= ft),
  );
  const [a, b] = [points[after - 1], points[after]];
  return a[1] + ((b[1] - a[1]) * (ft - a[0])) / (b[0] - a[0]);
}

const BALL = 9;

/** The ball where it starts to hook, with its word beside it. */
function buoy(
  { points, hookStartFt }: FanCourse,
  place: (point: Point) => Point,
  texture: string,
  finish: string,
  name: string,
  side: -1 | 1,
  paint: Paint,
): string[] {
  if (hookStartFt === null) return [];
  const [x, y] = place([hookStartFt, boardAt(points, hookStartFt)]);
  const word = { "font-family": SANS, "font-size": 15, fill: side < 0 ? paint.ink : paint.accent, "font-weight": side < 0 ? 400 : 600 };
  return [
    texturedBall({ x, y, radius: BALL }, texture, parseFinish(finish), paint),
    textEl(name, { x: x + side * (BALL + 4), y: y + (side < 0 ? -8 : 18), "text-anchor": side < 0 ? "end" : "start", ...word }),
  ];
}
