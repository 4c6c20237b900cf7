import type { Assumed } from "../assumptions.ts";
import { INCH, MICROMETRE, RPM } from "../units.ts";

/** How hard a pad is pressed, N. Our own three words for it; common practice has no figures. */
export const FORCES = { light: 10, medium: 20, hard: 35 } as const;
export type Force = keyof typeof FORCES;

/** Work at the bench, as far as the cut cares. */
export interface CutSetting {
  readonly grainUm: number;
  readonly force: Force;
  readonly by: "spinner" | "hand";
  readonly spinnerRpm: number;
  readonly diameterIn: number;
  /** Shore D; a softer cover is cut faster. */
  readonly hardnessD: number;
  /** A technician's own cut over the usual one, 1 where it has not been learned. */
  readonly ownCut: number;
}

const REFERENCE_GRAIN_UM = 10;
const REFERENCE_HARDNESS_D = 75;
/** A pad swept from the pole to the equator sees this share of the equator's speed (mean of sin over a quarter turn, weighted to where it dwells). */
const MEAN_SPEED_SHARE = 0.75;

/**
 * Mean depth that one second's work takes off the whole ball, µm/s. Archard and Preston: the volume goes with force times way, dV/dt = k F v
 * (Preston 1927; Archard 1953), k with the grain and the inverse of the hardness; spread over 4πR². The area of the pad cancels.
 */
export function depthRateUm(setting: CutSetting, a: Assumed): number {
  const radius = (setting.diameterIn / 2) * INCH;
  const speed = setting.by === "hand" ? a["cut.handSpeed"] : setting.spinnerRpm * RPM * radius * MEAN_SPEED_SHARE;
  return (cutConstant(setting, a) * FORCES[setting.force] * speed) / (4 * Math.PI * radius * radius) / MICROMETRE;
}

/** Depth per work done on an area, m per J/m²: Preston's constant with the grain, the inverse of the hardness and the technician's own cut. */
export function cutConstant({ grainUm, hardnessD, ownCut }: Pick<CutSetting, "grainUm" | "hardnessD" | "ownCut">, a: Assumed): number {
  return a["cut.preston"] * (grainUm / REFERENCE_GRAIN_UM) * (REFERENCE_HARDNESS_D / hardnessD) * ownCut;
}

/** Depth of the valleys that a surface of given effective roughness has, µm: what the next stage must take off to be rid of them. */
export function valleyDepthUm(effectiveRaUm: number, a: Assumed): number {
  return (effectiveRaUm / a["roughness.readingFactor"]) * a["cut.valleysPerRa"];
}
