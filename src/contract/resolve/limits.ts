import type { Limits } from "#engine/planning/question";
import type { JobLimits } from "../job/line.ts";
import type { DefaultsTaken } from "./defaultsTaken.ts";

type LeastMost = readonly [number, number];

/** Lines that most bowlers can play on most approaches. */
export const USUAL_LIMITS: Limits = { laydownBoard: [9, 36], launchAngleDeg: [-1.5, 4.5], breakpointBoard: [4, 39] };

/** @param at path of the field, for the list of defaults */
export function resolveLimits(limits: JobLimits | undefined, defaults: DefaultsTaken, at = "limits"): Limits {
  const pair = (key: keyof Limits) => defaults.or<LeastMost>(`${at}.${key}`, limits?.[key], USUAL_LIMITS[key]);
  return { laydownBoard: pair("laydownBoard"), launchAngleDeg: pair("launchAngleDeg"), breakpointBoard: pair("breakpointBoard") };
}
