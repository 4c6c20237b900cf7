import { DEGREE } from "../units.ts";
import type { Phase } from "./course.ts";

/** One moment of a run, whichever model made it. Lengths m, slip m/s, right-hander's frame. */
export interface Moment {
  readonly t: number;
  readonly x: number;
  readonly y: number;
  readonly slip: number;
}

/**
 * One definition each, for both models. Hook start: a quarter of the initial slip is gone, of a ball that turns. Roll start: slip falls below 0.15 m/s.
 * Breakpoint: the largest excursion outward. Distances in m; null where it did not happen before the end.
 */
export interface Phases {
  readonly hookStart: number | null;
  readonly rollStart: number | null;
  readonly breakpoint: Moment;
}

export const HOOK_SHARE = 0.75;
export const ROLL_SLIP = 0.15;
/** A ball whose direction changes by less from the hand to the pins goes on as it was sent: nobody would see it hook. Chosen: 4 in on the whole lane. */
const TURN_SEEN = 0.25 * DEGREE;

/** @param moments at least one, in time order. */
export function phasesOf(moments: readonly Moment[]): Phases {
  return {
    hookStart: turns(directionAt(moments, 1), directionAt(moments, moments.length - 1))
      ? whereSlipFalls(moments, HOOK_SHARE * moments[0].slip)
      : null,
    rollStart: whereSlipFalls(moments, ROLL_SLIP),
    breakpoint: moments.reduce((furthest, moment) => (moment.x > furthest.x ? moment : furthest)),
  };
}

/** Whether a ball that goes from one direction to another, radians, is seen to turn. */
export function turns(from: number, to: number): boolean {
  return Math.abs(to - from) >= TURN_SEEN;
}

/** Radians outward, from the moment before; along the lane where there is none. */
function directionAt(moments: readonly Moment[], at: number): number {
  if (at < 1 || at >= moments.length) return 0;
  return Math.atan2(moments[at].x - moments[at - 1].x, moments[at].y - moments[at - 1].y);
}

function whereSlipFalls(moments: readonly Moment[], to: number): number | null {
  const after = moments.findIndex((moment) => moment.slip <= to);
  if (after < 0) return null;
  if (after === 0) return moments[0].y;
  const [from, until] = [moments[after - 1], moments[after]];
  return from.y + ((until.y - from.y) * (from.slip - to)) / (from.slip - until.slip);
}

export function phaseAt(phases: Phases, y: number): Phase {
  if (phases.rollStart !== null && y >= phases.rollStart) return "roll";
  return phases.hookStart !== null && y >= phases.hookStart ? "hook" : "skid";
}
