import type { Course } from "#engine/motion/course";
import { CHART } from "#words/en/charts";
import { boardAt } from "./courseLine.ts";
import { type Offer, type PlacedLabel, placeLabels } from "./labelPlaces.ts";
import type { LaneFrame } from "./laneFrame.ts";
import { type Paint, SANS } from "./paint.ts";
import { el, type Point, textEl } from "./svg.ts";

interface Station {
  readonly ft: number;
  readonly board: number;
  readonly words: string;
  /** On which side of the course the words stand if they can: towards the middle of the lane, or towards the edge. */
  readonly side: "inside" | "outside";
  readonly anchor: Offer["anchor"];
  readonly hasTick: boolean;
}

/** The places of a course that are worth a figure, from the foul line on. */
export function stationsOf(course: Course): Station[] {
  const { hookStartFt, rollStartFt, breakpoint, entryAngleDeg, boardAtPins } = course;
  const list: Station[] = [];
  const add = (ft: number | null, words: (ft: number, board: number) => string, side: Station["side"], anchor: Offer["anchor"]): void => {
    const board = ft === null ? null : boardAt(course, ft);
    if (ft !== null && board !== null) list.push({ ft, board, words: words(ft, board), side, anchor, hasTick: true });
  };
  add(0.5, (_, board) => CHART.laidDown(board), "inside", "start");
  add(hookStartFt, CHART.hookAt, "outside", "end");
  // A ball that only ever moves inwards is furthest outside where it was laid down: that is no breakpoint.
  if (breakpoint.yFt > 1)
    list.push({
      ft: breakpoint.yFt,
      board: breakpoint.board,
      words: CHART.breakpointAt(breakpoint.yFt, breakpoint.board),
      side: "outside",
      anchor: "start",
      hasTick: true,
    });
  add(rollStartFt, CHART.rollAt, "inside", "end");
  if (entryAngleDeg !== null && boardAtPins !== null) {
    list.push({ ft: 59.5, board: boardAtPins, words: CHART.entry(entryAngleDeg), side: "inside", anchor: "end", hasTick: false });
  }
  return list;
}

/** Towards the edge on the bowler's side, as a direction in the picture. */
function outwardOf(frame: LaneFrame): Point {
  return frame.hand === "right" ? frame.rightward : [-frame.rightward[0], -frame.rightward[1]];
}

/** Where the words of a course's stations stand; they keep off each other, and off the courses where they can. */
export function placeStations(course: Course, frame: LaneFrame, courses: readonly Point[], fontSize: number): PlacedLabel[] {
  const room = { left: frame.left, top: frame.top, right: frame.left + frame.width, bottom: frame.top + frame.height };
  const labels = stationsOf(course).map((station) => ({ words: station.words, offers: offersFor(station, frame, fontSize) }));
  return placeLabels(labels, room, courses, fontSize);
}

function offersFor(station: Station, frame: LaneFrame, fontSize: number): Offer[] {
  const [x, y] = frame.fromHand(station.ft, station.board);
  const outward = outwardOf(frame);
  const sides = station.side === "inside" ? [-1, 1] : [1, -1];
  if (frame.layout === "lying") {
    const anchors = [station.anchor, ...(["start", "end", "middle"] as const).filter((a) => a !== station.anchor)];
    return [13, 27, 41].flatMap((away) =>
      sides.flatMap((side) =>
        anchors.map((anchor): Offer => {
          const down = side * outward[1];
          const along = anchor === "end" ? 6 : 0;
          return { at: [x + along, y + down * away + (down > 0 ? fontSize * 0.75 : 0)], anchor };
        }),
      ),
    );
  }
  // Upright, words stand beside the course: on the inside there is room, so that side comes first whatever was wished.
  return [0, 1, -1, 2, -2].flatMap((lines) =>
    [-1, 1].map((side): Offer => {
      const right = side * outward[0];
      return { at: [x + right * 12, y + fontSize * (0.35 + 1.3 * lines)], anchor: right > 0 ? "start" : "end" };
    }),
  );
}

/** Ticks across the course, and the words with feet and boards. */
export function stationMarks(
  course: Course,
  placed: readonly PlacedLabel[],
  frame: LaneFrame,
  paint: Paint,
  colour: string,
  fontSize: number,
): string {
  const outward = outwardOf(frame);
  const ticks = stationsOf(course)
    .filter((station) => station.hasTick)
    .map((station) => {
      const [x, y] = frame.fromHand(station.ft, station.board);
      const d = `M${x - outward[0] * 8},${y - outward[1] * 8}L${x + outward[0] * 8},${y + outward[1] * 8}`;
      return el("path", { d, stroke: colour, "stroke-width": 1.6 });
    });
  const style = {
    "font-family": SANS,
    "font-size": fontSize,
    fill: colour,
    stroke: paint.lane,
    "stroke-width": 3.2,
    "stroke-linejoin": "round",
    "paint-order": "stroke",
  };
  const words = placed.map(({ words: text, at, anchor }) => textEl(text, { x: at[0], y: at[1], "text-anchor": anchor, ...style }));
  return el("g", { class: "gw-stations" }, ...ticks, ...words);
}
