import { PINS_PLANE, xToBoard } from "../lane/geometry.ts";
import { HOOK_SHARE } from "../motion/phases.ts";
import { DEGREE, FOOT, MPH, RPM } from "../units.ts";
import { columnAt, type FreeCourse } from "./freeFriction.ts";
import { type CourseNumbers, deliveredOf } from "./numbersOfCourse.ts";

export const FIGURE_IDS = [
  "launchSpeedMph",
  "launchAngleDeg",
  "laydownBoard",
  "hookStartFt",
  "breakpointFt",
  "breakpointBoard",
  "entryAngleDeg",
  "boardAtPins",
  "speedAtPinsMph",
  "revRateRpm",
] as const;
export type FigureId = (typeof FIGURE_IDS)[number];

/** What a course comes to, by the definitions of docs/units-and-axes.md; null where that did not happen on it. */
export type CourseFigures = Readonly<Record<FigureId, number | null>>;

export function figuresOf(numbers: CourseNumbers, course: FreeCourse): CourseFigures {
  const { x, angle, speed, spin } = deliveredOf(numbers);
  const breakpoint = breakpointOf(course);
  const [vx, vy] = [columnAt(course.vx, PINS_PLANE), columnAt(course.vy, PINS_PLANE)];
  const hook = whereGone(course, 1 - HOOK_SHARE);
  return {
    launchSpeedMph: speed / MPH,
    launchAngleDeg: angle / DEGREE,
    laydownBoard: xToBoard(x),
    hookStartFt: hook === null ? null : hook / FOOT,
    breakpointFt: breakpoint.y / FOOT,
    breakpointBoard: xToBoard(breakpoint.x),
    entryAngleDeg: Math.atan2(-vx, vy) / DEGREE,
    boardAtPins: xToBoard(columnAt(course.x, PINS_PLANE)),
    speedAtPinsMph: Math.hypot(vx, vy) / MPH,
    revRateRpm: spin / RPM,
  };
}

/** Where a share of the slip is gone. */
function whereGone({ y, gone }: FreeCourse, share: number): number | null {
  const after = gone.findIndex((value) => value >= share);
  if (after < 0 || y[after] > PINS_PLANE) return null;
  if (after === 0) return 0;
  return y[after - 1] + ((y[after] - y[after - 1]) * (share - gone[after - 1])) / (gone[after] - gone[after - 1]);
}

/** The furthest place outward before the pins: where the ball stops going outward, or an end. */
function breakpointOf({ y, x, vx, vy }: FreeCourse): { readonly x: number; readonly y: number } {
  const turned = vx.findIndex((value) => value <= 0);
  if (turned === 0) return { x: x[0], y: y[0] };
  if (turned < 0 || y[turned] > PINS_PLANE) return { x: columnAt(x, PINS_PLANE), y: PINS_PLANE };
  const before = turned - 1;
  const along = ((y[turned] - y[before]) * vx[before]) / (vx[before] - vx[turned]);
  // v_x falls evenly between two rows, so half of what it would have taken outward.
  return { y: y[before] + along, x: x[before] + (0.5 * along * vx[before]) / vy[before] };
}
