import type { Course } from "#engine/motion/course";
import { CHART } from "#words/en/charts";
import { boardAt } from "./courseLine.ts";
import type { LaneFrame } from "./laneFrame.ts";
import { type Paint, SANS } from "./paint.ts";
import { el, type Point, textEl } from "./svg.ts";

interface Station {
  readonly ft: number;
  readonly board: number;
  readonly words: string;
  /** On which side of the course the words stand: towards the middle of the lane, or towards the edge. */
  readonly side: "inside" | "outside";
  readonly anchor: "start" | "middle" | "end";
}

/** The places of a course that are worth a figure, from the foul line on. */
export function stationsOf(course: Course): Station[] {
  const list: Station[] = [];
  const start = boardAt(course, 0.5);
  if (start !== null) list.push({ ft: 0.5, board: start, words: CHART.laidDown(start), side: "inside", anchor: "start" });
  const { hookStartFt, rollStartFt, breakpoint } = course;
  const hookBoard = hookStartFt === null ? null : boardAt(course, hookStartFt);
  if (hookStartFt !== null && hookBoard !== null)
    list.push({ ft: hookStartFt, board: hookBoard, words: CHART.hookAt(hookStartFt, hookBoard), side: "outside", anchor: "end" });
  list.push({
    ft: breakpoint.yFt,
    board: breakpoint.board,
    words: CHART.breakpointAt(breakpoint.yFt, breakpoint.board),
    side: "outside",
    anchor: "start",
  });
  const rollBoard = rollStartFt === null ? null : boardAt(course, rollStartFt);
  if (rollStartFt !== null && rollBoard !== null)
    list.push({ ft: rollStartFt, board: rollBoard, words: CHART.rollAt(rollStartFt, rollBoard), side: "inside", anchor: "end" });
  return list;
}

/** Ticks across the course with feet and boards, and the entry angle at the pins. */
export function stationMarks(course: Course, frame: LaneFrame, paint: Paint, colour: string, fontSize: number): string {
  const outward: Point = frame.hand === "right" ? frame.rightward : [-frame.rightward[0], -frame.rightward[1]];
  const style = {
    "font-family": SANS,
    "font-size": fontSize,
    fill: colour,
    stroke: paint.lane,
    "stroke-width": 3.2,
    "stroke-linejoin": "round",
    "paint-order": "stroke",
  };
  const lying = frame.layout === "lying";
  let lastY = Number.POSITIVE_INFINITY;
  const marks = stationsOf(course).map((station) => {
    const [x, y] = frame.fromHand(station.ft, station.board);
    const tick = el("path", {
      d: `M${x - outward[0] * 8},${y - outward[1] * 8}L${x + outward[0] * 8},${y + outward[1] * 8}`,
      stroke: colour,
      "stroke-width": 1.6,
    });
    if (lying) {
      const side = (station.side === "inside" ? -1 : 1) * outward[1];
      return (
        tick +
        textEl(station.words, {
          x: station.anchor === "end" ? x + 6 : x,
          y: withinLane(y + side * 14 + (side > 0 ? fontSize * 0.7 : 0), frame, fontSize),
          "text-anchor": station.anchor,
          ...style,
        })
      );
    }
    // Upright, all words stand on the inside, where there is room; they give way to each other up the lane.
    lastY = Math.min(y + fontSize * 0.35, lastY - fontSize * 1.25);
    return tick + textEl(station.words, { x: x - outward[0] * 12, y: lastY, "text-anchor": outward[0] > 0 ? "end" : "start", ...style });
  });
  return el("g", { class: "gw-stations" }, ...marks, entryMark(course, frame, outward, style));
}

/** Words beside a course near the edge stay on the lane, off the border's figures. */
function withinLane(y: number, frame: LaneFrame, fontSize: number): number {
  return Math.max(frame.top + fontSize, Math.min(frame.top + frame.height - 3, y));
}

function entryMark(course: Course, frame: LaneFrame, outward: Point, style: Record<string, string | number>): string {
  if (course.entryAngleDeg === null) return "";
  const words = CHART.entry(course.entryAngleDeg);
  const [x, y] = frame.fromHand(59.5, course.boardAtPins ?? 17.5);
  // On the inside: the course comes from the outside, and there it would run through the words.
  return frame.layout === "lying"
    ? textEl(words, { x: x - 4, y: y - outward[1] * 12 + 4, "text-anchor": "end", ...style })
    : textEl(words, { x: x - outward[0] * 12, y: y + 4, "text-anchor": outward[0] > 0 ? "end" : "start", ...style });
}
