import type { Vector } from "../vector.ts";
import type { MomentumHistory } from "./flare.ts";
import type { Moment } from "./phases.ts";
import type { Shot } from "./shot.ts";

/** A ball's state at a wanted distance. */
export interface RawState {
  readonly y: number;
  readonly t: number;
  readonly x: number;
  readonly v: readonly [number, number];
  readonly w: Vector;
}

/** A run of either model before it is told in boards and feet: right-hander's frame, SI. */
export interface RawRun {
  readonly moments: readonly Moment[];
  readonly history: MomentumHistory;
  /** States at the wanted distances that were reached, in order of distance. */
  readonly states: readonly RawState[];
  readonly energy: Shot["energy"];
}
