import { PIN_SPOTS_IN } from "#engine/pins/spots";
import { CHART } from "#words/en/charts";
import type { LaneFrame } from "./laneFrame.ts";
import { type Paint, SANS } from "./paint.ts";
import { el, type Point, pathOf, textEl } from "./svg.ts";

/** Arrows on boards 5, 10 … 35 between 12 and 16 ft; dots at 7 to 8 ft (governing body's lane specification). */
const ARROW_BOARDS = [5, 10, 15, 20, 25, 30, 35];
const DOT_BOARDS = [3, 5, 8, 11, 14, 26, 29, 32, 35, 37];
const HEAD_PIN_FT = 60;
const BOARD_IN = 41.5 / 39;

/** Where the pins stand in the picture, the head pin first. */
export function pinPlaces(frame: LaneFrame): Point[] {
  return PIN_SPOTS_IN.map(([x, y]) => frame.fromRight(HEAD_PIN_FT + y / 12, 20 - x / BOARD_IN));
}

const shift = (p: Point, direction: Point, by: number): Point => [p[0] + direction[0] * by, p[1] + direction[1] * by];

/** Arrows, dots and pins. */
export function landmarks(frame: LaneFrame, paint: Paint): string {
  const arrows = ARROW_BOARDS.map((board) => {
    const tip = frame.fromRight(16 - (Math.abs(20 - board) / 5) * (4 / 3), board);
    const back = shift(tip, frame.forward, -11);
    return el("path", { d: `${pathOf([tip, shift(back, frame.rightward, 3.4), shift(back, frame.rightward, -3.4)])}Z` });
  });
  const dots = DOT_BOARDS.map((board) => {
    const [cx, cy] = frame.fromRight(7.5, board);
    return el("circle", { cx, cy, r: 1.7 });
  });
  const pins = pinPlaces(frame).map(([cx, cy], i) => {
    return el("circle", {
      cx,
      cy,
      r: Math.min(4.6, frame.perFt * 0.55),
      fill: paint.lane,
      stroke: paint.ink,
      "stroke-width": i === 0 ? 2 : 1.1,
      class: "gw-pin",
    });
  });
  return el("g", { fill: paint.faint, "fill-opacity": 0.75 }, ...arrows, ...dots) + el("g", {}, ...pins);
}

/** The chart's border: bars of five feet along it and of five boards across it, in turn dark and light, as on a sea chart. */
export function border(frame: LaneFrame, paint: Paint): string {
  const bar = 5;
  const boards = [0.5, 5, 10, 15, 20, 25, 30, 35, 39.5];
  const feet = [0, 5, 10, 15, 20, 25, 30, 35, 40, 45, 50, 55, 60, frame.toFt];
  const strip = (from: Point, to: Point, outward: Point, dark: boolean): string => {
    const corners = [from, to, shift(to, outward, bar), shift(from, outward, bar)];
    return el("path", { d: `${pathOf(corners)}Z`, fill: dark ? paint.ink : paint.lane });
  };
  const left: Point = [-frame.rightward[0], -frame.rightward[1]];
  const back: Point = [-frame.forward[0], -frame.forward[1]];
  const bars: string[] = [];
  feet.slice(1).forEach((to, i) => {
    const from = feet[i] as number;
    bars.push(strip(frame.fromRight(from, 0.5), frame.fromRight(to, 0.5), frame.rightward, i % 2 === 0));
    bars.push(strip(frame.fromRight(from, 39.5), frame.fromRight(to, 39.5), left, i % 2 === 0));
  });
  boards.slice(1).forEach((to, i) => {
    const from = boards[i] as number;
    bars.push(strip(frame.fromHand(0, from), frame.fromHand(0, to), back, i % 2 === 0));
    bars.push(strip(frame.fromHand(frame.toFt, from), frame.fromHand(frame.toFt, to), frame.forward, i % 2 === 0));
  });
  return el("g", { class: "gw-border", stroke: paint.ink, "stroke-width": 0.8 }, ...bars);
}

/** Figures along the border: feet from the foul line, boards from the bowler's side. */
export function scales(frame: LaneFrame, paint: Paint, fontSize: number): string {
  const lying = frame.layout === "lying";
  const common = { "font-family": SANS, "font-size": fontSize, fill: paint.ink, "font-variant-numeric": "tabular-nums" };
  const feet = [0, 10, 20, 30, 40, 50, 60].map((ft) => {
    const [x, y] = lying ? shift(frame.fromRight(ft, 0.5), [0, 1], 8 + fontSize) : shift(frame.fromRight(ft, 39.5), [-1, 0], 9);
    return textEl(ft === 60 && lying ? `60 ${CHART.feet}` : String(ft), {
      x,
      y: lying ? y : y + fontSize * 0.35,
      "text-anchor": lying ? "middle" : "end",
      ...common,
    });
  });
  const boards = [5, 10, 15, 20, 25, 30, 35].map((board) => {
    const [x, y] = lying ? shift(frame.fromHand(0, board), [-1, 0], 10) : shift(frame.fromHand(0, board), [0, 1], 8 + fontSize);
    return textEl(String(board), { x, y: lying ? y + fontSize * 0.35 : y, "text-anchor": lying ? "end" : "middle", ...common });
  });
  const [tx, ty] = frame.fromRight(0, 20);
  const name = lying ? CHART.boardsFrom(frame.hand) : `${CHART.boardsFrom(frame.hand)} · ${CHART.feetUp}`;
  const boardsName = lying
    ? textEl(name, { ...common, fill: paint.faint, "text-anchor": "middle", transform: `rotate(-90 ${tx - 34} ${ty})`, x: tx - 34, y: ty })
    : textEl(name, { ...common, fill: paint.faint, "text-anchor": "middle", x: tx, y: ty + 12 + 2.1 * fontSize });
  return el("g", { class: "gw-scales" }, ...feet, ...boards, boardsName);
}

/** Where the ball's centre should be when it meets the head pin: board 17.5 at 59.5 ft. */
export function pocketMark(frame: LaneFrame, paint: Paint): string {
  const [x, y] = frame.fromHand(59.5, 17.5);
  return el("path", { class: "gw-pocket", d: `M${x - 5},${y}h10M${x},${y - 5}v10`, stroke: paint.ink, "stroke-width": 1, fill: "none" });
}
