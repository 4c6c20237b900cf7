import type { BallJob } from "../ball/ball.ts";

/**
 * What a finish is judged by. A ball for strikes: their chance, each lane of the session on its own near-best lines; who hardly ever strikes: pins down with
 * the first ball. A control ball: the chance of one line that is held throughout. A spare or house ball: least hook.
 */
export const METRICS = ["strikeChance", "expectedPins", "leastChange", "leastHook"] as const;
export type Metric = (typeof METRICS)[number];

/** Best chance below which there is no telling finishes apart by strikes: then pins are counted. */
export const RARELY_STRIKES = 0.05;

/** @param bestChance of all finishes on the lane as found */
export function metricOf(job: BallJob, bestChance: number): Metric {
  if (job === "spare" || job === "house") return "leastHook";
  if (bestChance < RARELY_STRIKES) return "expectedPins";
  return job === "control" ? "leastChange" : "strikeChance";
}

/**
 * Two finishes closer than `asGood` are as good as each other; those closer than `tied` are not told apart at all. In the metric's own unit: two strikes and
 * half a strike in a hundred, 0.15 and 0.1 pins, half a board and an eighth of hook (all chosen).
 */
export const CLOSE: Readonly<Record<Metric, { readonly asGood: number; readonly tied: number }>> = {
  strikeChance: { asGood: 0.02, tied: 0.005 },
  leastChange: { asGood: 0.02, tied: 0.005 },
  expectedPins: { asGood: 0.15, tied: 0.1 },
  leastHook: { asGood: 0.5, tied: 0.12 },
};
