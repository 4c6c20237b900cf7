import type { Hand } from "#engine/delivery/bowler";
import type { FilmSheet } from "#engine/lane/filmSheet";
import type { Course } from "#engine/motion/course";
import { type Finish, finishText } from "#engine/surface/finish";
import { CHART } from "#words/en/charts";
import { cartouche, legend, legendHeight, phaseKey } from "./chartFurniture.ts";
import { boardAt, courseLine, type Emphasis, wake } from "./courseLine.ts";
import { type LaneFrame, type Layout, laneFrame } from "./laneFrame.ts";
import { laneGround } from "./laneGround.ts";
import { border, landmarks, pinPlaces, pocketMark, scales } from "./laneMarks.ts";
import { FILE_PAINT, type Paint, SANS } from "./paint.ts";
import { type PathNow, playedLines } from "./playedLine.ts";
import { placeStations, stationMarks, stationsOf } from "./stations.ts";
import { el, type Point, picture, textEl } from "./svg.ts";
import { finishTexture } from "./texture.ts";

export interface ChartCourse {
  readonly name: string;
  readonly finish: Finish;
  readonly course: Course;
  readonly emphasis: Emphasis;
}

export interface LaneChartInput {
  readonly film: FilmSheet;
  readonly hand: Hand;
  /** Drawn in this order; lettered A, B, C … in this order. */
  readonly courses: readonly ChartCourse[];
  /** Lines of a session, under the courses; the first is the one it is about. */
  readonly played?: readonly PathNow[];
  readonly title: string;
}

export interface LaneChartOptions {
  /** `lying` is 960 wide; `upright` is 360 wide, for a narrow page. */
  readonly layout?: Layout;
  readonly paint?: Paint;
  /** Prefix of the ids inside; unique in the page. */
  readonly id?: string;
}

interface Sizes {
  readonly width: number;
  readonly lane: { readonly left: number; readonly top: number; readonly width: number; readonly height: number };
  readonly belowLane: number;
  readonly font: number;
}

const SIZES: Readonly<Record<Layout, Sizes>> = {
  lying: { width: 960, lane: { left: 62, top: 80, width: 880, height: 265 }, belowLane: 36, font: 12.5 },
  upright: { width: 360, lane: { left: 34, top: 92, width: 312, height: 560 }, belowLane: 52, font: 11 },
};

/** Where a course bears its letter: staggered, so that courses close together can still be told apart. */
const letterFt = (index: number): number => 8 + 3.2 * (index % 9);

/**
 * The lane as a sea chart: oil as depth contours with their figures, each ball as a ship's course.
 * @returns SVG text; the same input gives the same text.
 */
export function laneChart(input: LaneChartInput, options: LaneChartOptions = {}): string {
  const layout = options.layout ?? "lying";
  const paint = options.paint ?? FILE_PAINT;
  const id = options.id ?? "lane-chart";
  const { width, lane, belowLane, font } = SIZES[layout];
  const frame = laneFrame(layout, input.hand, lane);
  const legendTop = lane.top + lane.height + belowLane;
  const leading = lead(input.courses);
  const wakes = input.courses.flatMap((c) => wake(c.course, frame, 0.5));
  const placed = leading === undefined ? [] : placeStations(leading.course, frame, [...wakes, ...pinRings(frame)], font);
  const oilWords = input.film.volumeMl > 0 ? CHART.oilSummary(input.film.volumeMl, input.film.lengthFt, input.film.ratio) : CHART.noOil;
  return picture(
    { width, height: legendTop + legendHeight(input.courses.length, layout) },
    { id, title: input.title, description: descriptionOf(input, oilWords) },
    el(
      "defs",
      {},
      clip(`${id}-lane`, frame),
      ...input.courses.map((c, i) => finishTexture(`${id}-finish-${i}`, c.finish, undefined, paint)),
    ),
    el("rect", { width: "100%", height: "100%", fill: paint.paper }),
    cartouche(input.title, oilWords, frame, width, paint, font),
    el(
      "g",
      { "clip-path": `url(#${id}-lane)` },
      laneGround(input.film, frame, { wakes, words: placed.map((p) => p.box) }, paint, font),
      landmarks(frame, paint),
      ...playedLines(input.played ?? [], frame, paint),
      ...drawnLast(input.courses).map((c) => courseLine(c.course, c.emphasis, frame, paint)),
    ),
    border(frame, paint),
    scales(frame, paint, font),
    pocketMark(frame, paint),
    leading === undefined
      ? ""
      : stationMarks(leading.course, placed, frame, paint, leading.emphasis === "pick" ? paint.accent : paint.ink, font),
    input.courses.length > 1 ? input.courses.map((c, i) => letterOn(c.course, i, frame, paint, font)).join("") : "",
    input.courses.length === 0 ? "" : phaseKey(frame, width, legendTop, paint, font),
    legend(input.courses, id, frame, legendTop, paint, font),
  );
}

/** The emphasised courses lie on top of the others. */
function drawnLast(courses: readonly ChartCourse[]): ChartCourse[] {
  const order: readonly Emphasis[] = ["other", "today", "pick"];
  return [...courses].sort((a, b) => order.indexOf(a.emphasis) - order.indexOf(b.emphasis));
}

function lead(courses: readonly ChartCourse[]): ChartCourse | undefined {
  return courses.find((c) => c.emphasis === "pick") ?? courses.find((c) => c.emphasis === "today") ?? courses[0];
}

function descriptionOf(input: LaneChartInput, oilWords: string): string {
  const sentences = input.courses.map((c) => {
    const end = c.course.boardAtPins === null ? CHART.leavesLane : CHART.atPins(c.course.boardAtPins);
    return CHART.courseDescription(CHART.courseName(finishText(c.finish), c.name), [...stationsOf(c.course).map((s) => s.words), end]);
  });
  return CHART.laneDescription(sentences, oilWords);
}

function clip(id: string, frame: LaneFrame): string {
  return el("clipPath", { id }, el("rect", { x: frame.left, y: frame.top, width: frame.width, height: frame.height }));
}

/** Words on a pin are worse than words on a course: a pin counts as many points. */
function pinRings(frame: LaneFrame): Point[] {
  return pinPlaces(frame).flatMap(([x, y]) => [-5, 0, 5].flatMap((dx) => [-5, 0, 5].map((dy): Point => [x + dx, y + dy])));
}

function letterOn(course: Course, index: number, frame: LaneFrame, paint: Paint, font: number): string {
  const ft = letterFt(index);
  const board = boardAt(course, ft);
  if (board === null) return "";
  const [cx, cy] = frame.fromHand(ft, board);
  return el(
    "g",
    { class: "gw-letter" },
    el("circle", { cx, cy, r: font * 0.62, fill: paint.lane, stroke: paint.ink, "stroke-width": 0.9 }),
    textEl(String.fromCharCode(65 + index), {
      x: cx,
      y: cy + font * 0.3,
      "text-anchor": "middle",
      "font-family": SANS,
      "font-size": font * 0.84,
      "font-weight": 600,
      fill: paint.ink,
    }),
  );
}
