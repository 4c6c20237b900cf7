import type { Force } from "../cut.ts";
import type { SideId } from "./sides.ts";

/** One side's work within a stage. */
export interface SideWork {
  readonly side: SideId;
  /** Time that the pad is swept or stroked over the side, s. */
  readonly seconds: number;
  readonly force: Force;
  /** Time that the pad stood still besides, and at which angle from the middle of the side; null if it was kept moving. */
  readonly held: { readonly atDeg: number; readonly seconds: number } | null;
}

interface AnyStage {
  readonly grainUm: number;
  /** Width of the pad where it presses, in. */
  readonly padDiameterIn: number;
  readonly sides: readonly SideWork[];
}

/** On the spinner: the ball turns about the side's axis, the pad is swept there and back between two angles from it, degrees. */
export interface SpinnerStage extends AnyStage {
  readonly by: "spinner";
  readonly spinnerRpm: number;
  readonly sweepDeg: readonly [from: number, to: number];
}

/** By hand: straight strokes in all directions over a patch around the middle of the side. */
export interface HandStage extends AnyStage {
  readonly by: "hand";
  /** Speed of the hand, m/s. */
  readonly strokeSpeed: number;
  /** Length of a stroke along the ball, degrees. */
  readonly strokeDeg: number;
  /** The middles of the strokes lie within this angle of the side's middle, degrees. */
  readonly patchDeg: number;
}

export type PadStage = SpinnerStage | HandStage;

/** What is taken where nobody says: our own figures, chosen. The pad's is that of a palm pressing on a larger pad. */
export const USUAL_PAD_WORK = {
  padDiameterIn: 4,
  sweepDeg: [5, 80],
  strokeDeg: 45,
  patchDeg: 40,
  cells: 6000,
} as const;

/** Limits of a pad stage: what a ball and a hand allow. */
export const PAD_LIMITS = {
  seconds: { from: 0, to: 3600 },
  padDiameterIn: { from: 0.5, to: 8 },
  angleDeg: { from: 0, to: 110 },
  strokeDeg: { from: 5, to: 120 },
  patchDeg: { from: 0, to: 90 },
  spinnerRpm: { from: 10, to: 3000 },
  cells: { from: 500, to: 50_000 },
} as const;
