import type { Ball } from "../ball/ball.ts";
import type { Bowler, Line } from "../delivery/bowler.ts";
import type { GivenFriction, Lane } from "../lane/lane.ts";
import type { Course } from "./course.ts";

export interface MotionModel {
  readonly motion: "full" | "averaged";
  readonly slipRegularisationMps: number;
  readonly rollingResistance: number;
  readonly startFt: number;
  readonly gravity: number;
  /** Unit quaternion body → space at the start; null: the seeded phase of the core. */
  readonly coreOrientation: readonly [number, number, number, number] | null;
}

export interface ShotSetup {
  readonly seed: number;
  readonly bowler: Bowler;
  readonly ball: Ball;
  readonly line: Line;
  readonly surface: { readonly kind: "lane"; readonly lane: Lane } | { readonly kind: "given"; readonly friction: GivenFriction };
  readonly model: MotionModel;
  /** Distances at which a sample is wanted, ft from the foul line. */
  readonly atFt: readonly number[];
}

export interface ShotSample {
  readonly yFt: number;
  readonly tS: number;
  readonly xM: number;
  readonly board: number;
  readonly velocityMps: readonly [number, number];
  readonly omegaRadps: readonly [number, number, number];
  readonly entryAngleDeg: number;
  readonly offLane: boolean;
}

export interface Shot {
  readonly samples: readonly ShotSample[];
  readonly gutter: { readonly yFt: number; readonly side: "left" | "right" } | null;
  readonly phases: {
    readonly hookStartFt: number | null;
    readonly rollStartFt: number | null;
    readonly breakpoint: { readonly board: number; readonly yFt: number };
    readonly slipAtPinsMps: number | null;
    readonly timeToPinsS: number | null;
    readonly speedAtPinsMph: number | null;
  };
  /** Wander of the oil rings over the ball, inches, to the pins; null with the averaged model of a ball without a differential. */
  readonly flare: { readonly toPinsIn: number; readonly to45FtIn: number };
  /** Kinetic energies and what friction took, J; residual is what the integration lost or made. */
  readonly energy: {
    readonly startJ: number;
    readonly endJ: number;
    readonly slidingLossJ: number;
    readonly rollingLossJ: number;
    readonly residualJ: number;
  };
  readonly reachedPins: boolean;
  readonly course: Course;
}
