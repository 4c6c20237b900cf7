import { scaleLinear } from "d3-scale";
import { area, line } from "d3-shape";
import { CHART } from "#words/en/charts";
import type { Layout } from "./laneFrame.ts";
import { FILE_PAINT, type Paint, SANS, SERIF } from "./paint.ts";
import { el, picture, textEl } from "./svg.ts";

/** The film across the lane at one distance: `um[i]` is the film on board i + 1 from the right edge, µm. */
export interface OilSection {
  readonly ft: number;
  readonly um: readonly number[];
}

interface SectionsOptions {
  /** `lying` is 960 wide; `upright` 360. */
  readonly layout?: Layout;
  readonly paint?: Paint;
  readonly id?: string;
}

const WIDTHS: Readonly<Record<Layout, number>> = { lying: 960, upright: 360 };
const FONTS: Readonly<Record<Layout, number>> = { lying: 12.5, upright: 11 };
const [LEFT, RIGHT] = [44, 12];
const [WORDS, DEPTH, GAP, FOOT] = [18, 52, 12, 34];
const ARROWS = [5, 10, 15, 20, 25, 30, 35];
/** Depths that a line may be ruled at, µm. */
const ROUND_UM = [0.2, 0.5, 1, 2, 5, 10, 20, 50];

/** Sections across the lane under one another, seen from the foul line: board 1 at the right. All have one scale of depth. */
export function oilSections(sections: readonly OilSection[], options: SectionsOptions = {}): string {
  const { layout = "lying", paint = FILE_PAINT, id = "oil-sections" } = options;
  const [width, font] = [WIDTHS[layout], FONTS[layout]];
  const most = Math.max(...sections.flatMap(({ um }) => um), ROUND_UM[0]);
  const ruled = ROUND_UM.findLast((um) => um <= 0.9 * most) ?? ROUND_UM[0];
  const x = scaleLinear([0.5, 39.5], [width - RIGHT, LEFT]);
  const y = scaleLinear([0, most], [WORDS + DEPTH, WORDS + 3]);
  const end = 8 + sections.length * (WORDS + DEPTH + GAP);
  const small = { "font-family": SANS, "font-size": font * 0.9, fill: paint.faint };
  const rows = sections.map((section, i) =>
    el(
      "g",
      { class: "gw-section", transform: `translate(0 ${8 + i * (WORDS + DEPTH + GAP)})` },
      textEl(CHART.sectionAt(section.ft), { x: LEFT, y: 12, "font-family": SERIF, "font-size": font * 1.1, fill: paint.ink }),
      textEl(CHART.deepest(Math.max(...section.um)), { ...small, x: width - RIGHT, y: 12, "text-anchor": "end" }),
      el("line", { x1: LEFT, x2: width - RIGHT, y1: y(ruled), y2: y(ruled), stroke: paint.hair, "stroke-dasharray": "1 4" }),
      textEl(CHART.depth(ruled), { ...small, x: LEFT - 6, y: y(ruled) + 4, "text-anchor": "end" }),
      ...film(section, x, y, paint),
      el("line", { x1: LEFT, x2: width - RIGHT, y1: y(0), y2: y(0), stroke: paint.ink }),
    ),
  );
  return picture(
    { width, height: end + FOOT },
    { id, title: CHART.sectionsTitle, description: sections.map(({ ft, um }) => CHART.sectionWords(ft, Math.max(...um))).join(" ") },
    el("rect", { width: "100%", height: "100%", fill: paint.paper }),
    ...ARROWS.map((board) => el("line", { x1: x(board), x2: x(board), y1: 26, y2: end - GAP, stroke: paint.hair, "stroke-width": 0.6 })),
    ...rows,
    ...[1, ...ARROWS, 39].map((board) => textEl(String(board), { ...small, x: x(board), y: end + 6, "text-anchor": "middle" })),
    textEl(CHART.boardsFrom("right"), { ...small, x: width - RIGHT, y: end + 24, "text-anchor": "end" }),
  );
}

type Scale = (value: number) => number;

/** The film and its upper edge; over the lane's edges it ends where the lane does. */
function film({ um }: OilSection, x: Scale, y: Scale, paint: Paint): readonly string[] {
  const points = [
    { board: 0.5, depth: um[0] },
    ...um.map((depth, i) => ({ board: i + 1, depth })),
    { board: um.length + 0.5, depth: um[um.length - 1] },
  ];
  const body = area<(typeof points)[number]>()
    .x(({ board }) => x(board))
    .y0(y(0))
    .y1(({ depth }) => y(depth));
  const edge = line<(typeof points)[number]>()
    .x(({ board }) => x(board))
    .y(({ depth }) => y(depth));
  return [
    el("path", { d: body(points) ?? "", fill: paint.oil, "fill-opacity": 0.22 }),
    el("path", { class: "gw-film", d: edge(points) ?? "", fill: "none", stroke: paint.oil, "stroke-width": 1.6 }),
  ];
}
