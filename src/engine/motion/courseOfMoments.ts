import type { Hand } from "../delivery/bowler.ts";
import { xToBoard } from "../lane/geometry.ts";
import { DEGREE, FOOT } from "../units.ts";
import type { Course, CoursePoint } from "./course.ts";
import { type Moment, phaseAt, phasesOf } from "./phases.ts";

/** A drawn course has a point about every foot; more would not show. */
const POINT_EVERY = FOOT;

/** @param atPins the ball at the plane of the pins, or null if it did not get there on the lane. */
export function courseOfMoments(
  moments: readonly Moment[],
  hand: Hand,
  atPins: { readonly x: number; readonly v: readonly [number, number] } | null,
): Course {
  const phases = phasesOf(moments);
  const points: CoursePoint[] = [];
  let next = Number.NEGATIVE_INFINITY;
  moments.forEach((moment, i) => {
    if (moment.y < next && i < moments.length - 1) return;
    next = moment.y + POINT_EVERY;
    points.push({ yFt: moment.y / FOOT, board: xToBoard(moment.x), phase: phaseAt(phases, moment.y) });
  });
  return {
    hand,
    points,
    hookStartFt: phases.hookStart === null ? null : phases.hookStart / FOOT,
    rollStartFt: phases.rollStart === null ? null : phases.rollStart / FOOT,
    breakpoint: { board: xToBoard(phases.breakpoint.x), yFt: phases.breakpoint.y / FOOT },
    boardAtPins: atPins ? xToBoard(atPins.x) : null,
    entryAngleDeg: atPins ? Math.atan2(-atPins.v[0], atPins.v[1]) / DEGREE : null,
  };
}
