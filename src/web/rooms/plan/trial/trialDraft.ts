import type { JobTrial } from "#contract/job/trial";
import { TRIAL_FINISHES } from "#engine/surface/pads";
import { type Json, valueAt } from "../../../jobFile/jobDraft.ts";
import type { Draft } from "../useDraft.ts";

/** A shot as it stands in the job. */
export interface ShotInJob {
  readonly finish: string;
  readonly boardAtPins: number;
  readonly sdBoards: number;
  readonly speedMph: number | null;
}

/** So many shots a finish: fewer are mostly the bowler's own scatter, more tell little. */
export const SHOTS_A_FINISH = 10;

/** The shots of the job's trial, as far as they can be read. */
export function shotsOf(job: unknown): readonly ShotInJob[] {
  const shots = valueAt(job, "trial.shots");
  if (!Array.isArray(shots)) return [];
  return shots.flatMap((shot: Partial<JobTrial["shots"][number]>) =>
    typeof shot.boardAtPins === "number" && shot.finish !== undefined
      ? [{ finish: String(shot.finish), boardAtPins: shot.boardAtPins, sdBoards: shot.sdBoards ?? 0.5, speedMph: shot.speedMph ?? null }]
      : [],
  );
}

/** The two finishes of the trial: those that were thrown, filled up with the usual ones. */
export function finishesOf(shots: readonly ShotInJob[]): readonly [string, string] {
  const [first = null, second = null] = [...new Set(shots.map(({ finish }) => finish))];
  const [dull, smooth] = TRIAL_FINISHES;
  if (first === null) return TRIAL_FINISHES;
  return [first, second ?? (first === smooth ? dull : smooth)];
}

/** Writes the shots into the job; none takes the trial out of it. */
export function keepShots(draft: Draft, shots: readonly ShotInJob[]): void {
  draft.set("trial", shots.length === 0 ? undefined : ({ shots: shots.map((shot) => ({ ...shot })) } as unknown as Json));
}

/** The trial as open data, as `gritwright trial` reads it. */
export function trialFile(shots: readonly ShotInJob[]): string {
  return `${JSON.stringify({ gritwright: 1, kind: "trial", shots }, null, 2)}\n`;
}
