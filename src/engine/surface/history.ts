import { ASSUMPTIONS, type Assumed, assume } from "../assumptions.ts";
import type { Abrasive } from "./abrasives.ts";
import { effectiveRaUm } from "./finish.ts";
import { gradeOf, PAD_NUMBERS, PADS } from "./pads.ts";

/** One thing that was done to a surface. */
export interface WorkDone {
  readonly abrasive: Abrasive;
  readonly by: "spinner" | "hand";
  /** Balls that the pad or paper had done before, ≥ 0. */
  readonly usesBefore: number;
  /** Initials of who did it; empty where nobody wrote it down. */
  readonly who: string;
  /** ISO date, empty where nobody wrote it down. */
  readonly on: string;
}

/** Effective roughness with its range, µm. */
export interface RoughnessRange {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

/**
 * A finish is a history: what was put on in which order, on what, by what. Each work takes the surface part of the way from what it was to what its
 * abrasive leaves, in the logarithm of Ra: nearly all of it on a spinner, less than half by hand. A worn pad leaves what the next finer one would.
 *
 * @param before what was there, µm effective; the first work's own value where nobody knows.
 * @returns the surface after the last work; `before` where there is none.
 */
export function roughnessOfHistory(works: readonly WorkDone[], before: RoughnessRange): RoughnessRange {
  const under = (end: "value" | "low" | "high") => works.reduce((ra, work) => afterWork(ra, work, assumedAt(end)), before[end]);
  const all = [under("value"), under("low"), under("high")];
  return { value: all[0], low: Math.min(...all), high: Math.max(...all) };
}

/** The assumptions that make a surface smoothest (`low`) or dullest (`high`); a hand's reach works both ways and stays at its value. */
function assumedAt(end: "value" | "low" | "high"): Assumed {
  if (end === "value") return assume();
  const ids = ["roughness.scale", "roughness.polishKeeps", "roughness.polishFloor", "roughness.slipPolishKeeps"] as const;
  return assume(Object.fromEntries(ids.map((id) => [id, ASSUMPTIONS[id][end]])));
}

function afterWork(ra: number, work: WorkDone, a: Assumed): number {
  const reach = a[work.by === "hand" ? "work.handReach" : "work.spinnerReach"];
  const leaves = leftBy(work, ra, a);
  return ra * (leaves / ra) ** reach;
}

/** What an abrasive leaves when it has done all it can, µm effective. */
export function leftBy({ abrasive, usesBefore }: Pick<WorkDone, "abrasive" | "usesBefore">, baseUm: number, a: Assumed): number {
  switch (abrasive.kind) {
    case "slipPolish":
      return Math.hypot(a["roughness.slipPolishKeeps"] * baseUm, a["roughness.polishFloor"]);
    case "cuttingPolish":
      return Math.hypot(a["roughness.polishKeeps"] * baseUm, a["roughness.polishFloor"]);
    default: {
      const number = abrasive.grade?.number ?? numberLike(abrasive.grainUm);
      const fresh = effectiveRaUm({ number, polished: false }, a);
      const worn = effectiveRaUm({ number: nextFiner(number), polished: false }, a);
      return fresh + (worn - fresh) * Math.min(1, usesBefore / abrasive.usesBeforeWorn);
    }
  }
}

function nextFiner(number: number): number {
  return PAD_NUMBERS.find((other) => other > number) ?? PAD_NUMBERS[PAD_NUMBERS.length - 1];
}

/** The number of the pad whose grain is nearest: what an abrasive without a grade is taken to leave. */
function numberLike(grainUm: number): number {
  const off = (pad: (typeof PADS)[number]) => Math.abs(gradeOf(pad).grainUm - grainUm);
  return PADS.reduce((best, pad) => (off(pad) < off(best) ? pad : best), PADS[0] as (typeof PADS)[number]).number;
}
