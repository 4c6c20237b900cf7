import type { Course, CoursePoint, Phase } from "#engine/motion/course";
import type { LaneFrame } from "./laneFrame.ts";
import type { Paint } from "./paint.ts";
import { el, type Point, pathOf } from "./svg.ts";

export type Emphasis = "today" | "pick" | "other";

type Place = Pick<CoursePoint, "yFt" | "board">;

interface Piece {
  readonly phase: Phase;
  readonly points: readonly Place[];
}

/**
 * The course cut where its phases begin. The cuts lie at the hook start and the roll start themselves, not at the
 * nearest point of the course, so that lines and ticks agree; neighbours share the place of the cut.
 */
export function pieces(course: Course): Piece[] {
  const end = Number.POSITIVE_INFINITY;
  const hook = course.hookStartFt ?? end;
  const roll = Math.max(hook, course.rollStartFt ?? end);
  const spans: readonly [Phase, number, number][] = [
    ["skid", Number.NEGATIVE_INFINITY, hook],
    ["hook", hook, roll],
    ["roll", roll, end],
  ];
  return spans.map(([phase, from, to]) => ({ phase, points: between(course, from, to) })).filter((piece) => piece.points.length > 1);
}

/** The course between two distances, with its places at both where it reaches them. */
function between(course: Course, fromFt: number, toFt: number): Place[] {
  const inside: Place[] = course.points.filter((p) => p.yFt > fromFt && p.yFt < toFt);
  const [first, last] = [fromFt, toFt].map((ft) => (Number.isFinite(ft) ? boardAt(course, ft) : null));
  return [...(first === null ? [] : [{ yFt: fromFt, board: first }]), ...inside, ...(last === null ? [] : [{ yFt: toFt, board: last }])];
}

/** Board (bowler's count) of the course at a distance, between its points; null beyond its ends. */
export function boardAt(course: Course, ft: number): number | null {
  const after = course.points.findIndex((p) => p.yFt >= ft);
  const b = course.points[after];
  if (b === undefined) return null;
  const a = course.points[after - 1] ?? b;
  return b.yFt === a.yFt ? b.board : a.board + ((b.board - a.board) * (ft - a.yFt)) / (b.yFt - a.yFt);
}

/** Where the course runs in the picture, every `stepFt`: what figures and soundings keep clear of. */
export function wake(course: Course, frame: LaneFrame, stepFt: number): Point[] {
  const places: Point[] = [];
  for (let ft = 0; ft <= 60; ft += stepFt) {
    const board = boardAt(course, ft);
    if (board !== null) places.push(frame.fromHand(ft, board));
  }
  return places;
}

/** Stroke of each phase: the phase is told by the line alone. */
export const PHASE_STROKES: Readonly<Record<Phase, Readonly<Record<string, string | number>>>> = {
  skid: { "stroke-width": 2.6, "stroke-dasharray": "0.1 6", "stroke-linecap": "round" },
  hook: { "stroke-width": 4.4, "stroke-linecap": "butt" },
  roll: { "stroke-width": 1.5, "stroke-linecap": "round" },
};

/** The ship's course of one ball: fine dots in skid, a heavy line in hook, a fine line in roll. */
export function courseLine(course: Course, emphasis: Emphasis, frame: LaneFrame, paint: Paint): string {
  const colour = emphasis === "pick" ? paint.accent : emphasis === "today" ? paint.ink : paint.faint;
  const drawn = pieces(course).map((piece) => {
    const stroke = PHASE_STROKES[piece.phase];
    const width = Number(stroke["stroke-width"]) * (emphasis === "other" ? 0.62 : 1);
    const d = pathOf(piece.points.map((p) => frame.fromHand(p.yFt, p.board)));
    return el("path", { ...stroke, "stroke-width": width, "data-phase": piece.phase, d });
  });
  return el("g", { class: "gw-course", "data-emphasis": emphasis, fill: "none", stroke: colour, "stroke-linejoin": "round" }, ...drawn);
}
