import { contours } from "d3-contour";
import { scaleLinear } from "d3-scale";
import type { Hand } from "#engine/delivery/bowler";
import { type HitPoint, type StrikeMap, strikeAt } from "#engine/pins/carry";
import { CARRY } from "#words/en/carry";
import { FILE_PAINT, type Paint, SANS, SERIF } from "./paint.ts";
import { el, type Point, pathOf, picture, textEl } from "./svg.ts";

export interface CarryChartInput {
  readonly carry: StrikeMap;
  readonly hand: Hand;
  /** The bowler's shots at the pins; none where only the pins are shown. */
  readonly hits: readonly HitPoint[];
}

const [WIDTH, HEIGHT] = [640, 360];
const BOX = { left: 58, right: 620, top: 58, bottom: 300 };
/** Boards and angles shown: from the nose to hits too light to strike. */
const BOARDS = [13, 21] as const;
const ENTRIES = [0, 8] as const;
/** Strikes in 100 along the contours, as depths on a chart. */
const LEVELS = [20, 40, 60, 80, 90];
const NODES = { across: 65, up: 33 };

/** Strike chance over board × entry angle as depth contours, with the bowler's cloud of hits. The pins are seen from behind the bowler. */
export function carryChart({ carry, hand, hits }: CarryChartInput, paint: Paint = FILE_PAINT, id = "carry"): string {
  // Boards are counted from the hand's side: seen from behind, a right-hander's grow to the left.
  const range = hand === "right" ? [BOX.right, BOX.left] : [BOX.left, BOX.right];
  const x = scaleLinear(BOARDS, range);
  const y = scaleLinear(ENTRIES, [BOX.bottom, BOX.top]);
  const grid = chances(carry);
  const best = bestOf(grid);
  const inside = hits.filter(
    ({ board, entryDeg }) => board >= BOARDS[0] && board <= BOARDS[1] && entryDeg >= ENTRIES[0] && entryDeg <= ENTRIES[1],
  );
  return picture(
    { width: WIDTH, height: HEIGHT },
    {
      id,
      title: CARRY.chartTitle,
      description: CARRY.chartDescription(CARRY.bestHit(best.inHundred, best.board, best.entryDeg), inside.length),
    },
    el("rect", { width: WIDTH, height: HEIGHT, fill: paint.paper }),
    textEl(CARRY.chartTitle, { x: BOX.left, y: 24, "font-family": SERIF, "font-size": 16, fill: paint.ink }),
    textEl(CARRY.chartNote, { x: BOX.left, y: 42, "font-family": SERIF, "font-size": 11.5, "font-style": "italic", fill: paint.faint }),
    el("rect", { x: BOX.left, y: BOX.top, width: BOX.right - BOX.left, height: BOX.bottom - BOX.top, fill: paint.lane }),
    ...depths(grid, x, y, paint),
    ...inside.map(({ board, entryDeg }) =>
      el("circle", { class: "gw-hit", cx: x(board), cy: y(entryDeg), r: 1.8, fill: paint.ink, "fill-opacity": 0.55 }),
    ),
    el("path", {
      // On the edge of what is shown it stays whole.
      d: `M${x(best.board) - 6},${clamp(y(best.entryDeg), [BOX.top + 8, BOX.bottom - 8])}h12m-6,-6v12`,
      stroke: paint.accent,
      "stroke-width": 1.5,
    }),
    ...axes(x, y, hand, paint),
  );
}

type Scale = (value: number) => number;

/** Strikes in 100 at the nodes, rows from 0° upwards. */
function chances(carry: StrikeMap): readonly number[] {
  return Array.from({ length: NODES.across * NODES.up }, (_, i) => {
    const { board, entryDeg } = nodeAt(i % NODES.across, Math.floor(i / NODES.across));
    return 100 * strikeAt(carry, board, entryDeg);
  });
}

function nodeAt(column: number, row: number): { board: number; entryDeg: number } {
  return {
    board: BOARDS[0] + ((BOARDS[1] - BOARDS[0]) * column) / (NODES.across - 1),
    entryDeg: ENTRIES[0] + ((ENTRIES[1] - ENTRIES[0]) * row) / (NODES.up - 1),
  };
}

function bestOf(grid: readonly number[]): { inHundred: number; board: number; entryDeg: number } {
  const at = grid.reduce((best, value, i) => (value > grid[best] ? i : best), 0);
  return { inHundred: grid[at], ...nodeAt(at % NODES.across, Math.floor(at / NODES.across)) };
}

/** Contours, filled deeper towards the best, each with its figure on its left shore. */
function depths(grid: readonly number[], x: Scale, y: Scale, paint: Paint): string[] {
  const toChart = ([column, row]: number[]): Point => {
    // Contours put a node's value at its middle.
    const { board, entryDeg } = nodeAt(column - 0.5, row - 0.5);
    return [x(clamp(board, BOARDS)), y(clamp(entryDeg, ENTRIES))];
  };
  const shapes = contours().size([NODES.across, NODES.up]).smooth(true).thresholds(LEVELS)([...grid]);
  const fills = shapes.map(({ coordinates }) =>
    el("path", {
      d: coordinates
        .flat()
        .map((ring) => `${pathOf(ring.map(toChart))}Z`)
        .join(""),
      "fill-rule": "evenodd",
      fill: paint.oil,
      "fill-opacity": 0.13,
      stroke: paint.oil,
      "stroke-width": 1,
    }),
  );
  const figures = shapes.flatMap(({ value, coordinates }, level) => {
    const ring = coordinates.map(([outer]) => outer).toSorted((a, b) => b.length - a.length)[0];
    if (ring === undefined) return [];
    // Each a little higher than the last on its left shore, so that they do not stand in each other's way.
    const wanted = BOX.bottom - ((level + 1) * (BOX.bottom - BOX.top)) / (LEVELS.length + 1);
    const shore = ring.map(toChart);
    const middle = shore.reduce((sum, [along]) => sum + along, 0) / shore.length;
    const [left, top] = shore
      .filter(([along]) => along <= middle)
      .reduce((near, point) => (Math.abs(point[1] - wanted) < Math.abs(near[1] - wanted) ? point : near));
    const edge = left <= BOX.left + 1 ? 14 : 0;
    return [
      textEl(String(value), {
        x: left + edge,
        y: top + 4,
        "text-anchor": "middle",
        "font-family": SANS,
        "font-size": 11,
        fill: paint.ink,
        stroke: paint.lane,
        "stroke-width": 3,
        "paint-order": "stroke",
      }),
    ];
  });
  return [...fills, ...figures];
}

function clamp(value: number, [low, high]: readonly [number, number]): number {
  return Math.min(high, Math.max(low, value));
}

function axes(x: Scale, y: Scale, hand: Hand, paint: Paint): string[] {
  const figure = { "font-family": SANS, "font-size": 12, fill: paint.faint };
  const boards = Array.from({ length: BOARDS[1] - BOARDS[0] + 1 }, (_, i) => BOARDS[0] + i);
  const word = { "font-family": SERIF, "font-size": 13, "font-style": "italic", fill: paint.ink };
  const [highEnd, lightEnd] = hand === "right" ? [BOX.left, BOX.right] : [BOX.right, BOX.left];
  return [
    el("rect", {
      x: BOX.left,
      y: BOX.top,
      width: BOX.right - BOX.left,
      height: BOX.bottom - BOX.top,
      fill: "none",
      stroke: paint.ink,
    }),
    ...boards.map((board) => textEl(String(board), { x: x(board), y: BOX.bottom + 18, "text-anchor": "middle", ...figure })),
    ...[0, 2, 4, 6, 8].map((deg) => textEl(`${deg}°`, { x: BOX.left - 8, y: y(deg) + 4, "text-anchor": "end", ...figure })),
    textEl(CARRY.high, { x: highEnd, y: BOX.bottom + 40, "text-anchor": hand === "right" ? "start" : "end", ...word }),
    textEl(CARRY.light, { x: lightEnd, y: BOX.bottom + 40, "text-anchor": hand === "right" ? "end" : "start", ...word }),
    textEl(CARRY.boardAxis(hand), { x: (BOX.left + BOX.right) / 2, y: BOX.bottom + 40, "text-anchor": "middle", ...figure }),
    textEl(CARRY.entryAxis, { x: 16, y: BOX.bottom, transform: `rotate(-90 16 ${BOX.bottom})`, ...figure }),
  ];
}
