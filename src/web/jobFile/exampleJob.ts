import type { JobDraft } from "./jobDraft.ts";

/** The job that the page opens with. Bowler and ball are invented; the lane is the usual one of a league night. */
export const EXAMPLE_JOB: JobDraft = {
  gritwright: 1,
  seed: 1,
  bowler: { name: "A. Bowler", hand: "right", speedMph: 17.5, revRateRpm: 320, axisRotationDeg: 45, axisTiltDeg: 14 },
  ball: { name: "Example ball", cover: "hybrid", job: "strike", finish: "1000" },
  lane: { pattern: "house-40", playedShots: 0 },
};
