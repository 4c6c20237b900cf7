import { fromOtherEdge } from "#engine/delivery/backup";
import { type Limits, USUAL_LIMITS } from "#engine/planning/question";
import type { JobLimits } from "../job/line.ts";
import type { DefaultsTaken } from "./defaultsTaken.ts";

type LeastMost = readonly [number, number];

/** @param at path of the field, for the list of defaults */
export function resolveLimits(limits: JobLimits | undefined, defaults: DefaultsTaken, at = "limits"): Limits {
  const pair = (key: keyof Limits) => defaults.or<LeastMost>(`${at}.${key}`, limits?.[key], USUAL_LIMITS[key]);
  return { laydownBoard: pair("laydownBoard"), launchAngleDeg: pair("launchAngleDeg"), breakpointBoard: pair("breakpointBoard") };
}

/** Limits as the other hand counts them; what is not given stays so. */
export function limitsInMirror<Given extends Partial<Limits> | JobLimits>({ laydownBoard, launchAngleDeg, breakpointBoard }: Given): Given {
  const across = (pair: LeastMost | undefined) => pair && ([fromOtherEdge(pair[1]), fromOtherEdge(pair[0])] as const);
  return {
    ...(laydownBoard && { laydownBoard: across(laydownBoard) }),
    ...(launchAngleDeg && { launchAngleDeg: [0 - launchAngleDeg[1], 0 - launchAngleDeg[0]] }),
    ...(breakpointBoard && { breakpointBoard: across(breakpointBoard) }),
  } as Given;
}
