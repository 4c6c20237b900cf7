import { fromOtherEdge } from "#engine/delivery/backup";
import type { TrialShot } from "#engine/planning/question";
import type { JobTrial } from "../job/trial.ts";

/** Shots of a trial as the engine takes them. */
export function trialShotsOf(shots: JobTrial["shots"]): readonly TrialShot[] {
  return shots.map(({ finish, boardAtPins, sdBoards, speedMph }) => ({ finish, boardAtPins, sdBoards, speedMph: speedMph ?? null }));
}

/** The same shots, their boards counted from the other edge. */
export function trialInMirror(shots: readonly TrialShot[]): readonly TrialShot[] {
  return shots.map((shot) => ({ ...shot, boardAtPins: fromOtherEdge(shot.boardAtPins) }));
}
