import type { TrialShot } from "#engine/planning/question";
import type { JobTrial } from "../job/trial.ts";

/** Shots of a trial as the engine takes them. */
export function trialShotsOf(shots: JobTrial["shots"]): readonly TrialShot[] {
  return shots.map(({ finish, boardAtPins, sdBoards, speedMph }) => ({ finish, boardAtPins, sdBoards, speedMph: speedMph ?? null }));
}
