import { knownAbrasive } from "../surface/abrasives.ts";
import type { StageKind } from "../surface/stages.ts";

/** Kinds that take surface off, and so make a cut of what was there before. */
const CUTS: readonly StageKind[] = ["open", "plug", "cut"];

export function isCut(kind: StageKind | null): boolean {
  return kind !== null && CUTS.includes(kind);
}

/** Whether work of this kind leaves another surface than it found. */
export function changesSurface(kind: StageKind | null): boolean {
  return kind === "polish" || isCut(kind);
}

/** µm; what is not known is comparable with nothing. */
export function grainOf(abrasive: string | null): number {
  return knownAbrasive(abrasive)?.grainUm ?? Number.NaN;
}

/** Whether one abrasive does what the other would: itself, or one of the same grain, as paper P1000 for a 1000 pad (common practice). */
export function isAlike(used: string | null, planned: string | null): boolean {
  return used === planned || grainOf(used) === grainOf(planned);
}
