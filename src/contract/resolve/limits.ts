import { type Limits, USUAL_LIMITS } from "#engine/planning/question";
import type { JobLimits } from "../job/line.ts";
import type { DefaultsTaken } from "./defaultsTaken.ts";

type LeastMost = readonly [number, number];

/** @param at path of the field, for the list of defaults */
export function resolveLimits(limits: JobLimits | undefined, defaults: DefaultsTaken, at = "limits"): Limits {
  const pair = (key: keyof Limits) => defaults.or<LeastMost>(`${at}.${key}`, limits?.[key], USUAL_LIMITS[key]);
  return { laydownBoard: pair("laydownBoard"), launchAngleDeg: pair("launchAngleDeg"), breakpointBoard: pair("breakpointBoard") };
}
