import type { Standing, Worlds } from "./comparison.ts";
import type { SeenInWorlds } from "./worldScores.ts";

/** What a shop can measure to make a plan better: where ten balls arrive on a known line, with one finish or with the dullest and the smoothest; speeds. */
export const MEASURES = ["tenBalls", "trial", "speeds"] as const;
export type Measure = (typeof MEASURES)[number];

export interface MeasureWorth {
  readonly measure: Measure;
  /** Strikes, 0–1, that the pick gains in the mean. */
  readonly gain: number;
}

/** Errors of what is seen, standard deviations: the mean board of ten shots (their scatter over √10, and the eye), a loss of speed, mph. Chosen. */
const ERRORS = { board: 0.5, speedMph: 0.15 } as const;
/** With fewer worlds a gain is noise. */
const LEAST_WORLDS = 32;
/** Gains below this are not worth saying. */
const LEAST_GAIN = 0.001;

/**
 * What each measurement would add to the pick: over every world taken for the true one, the pick that the others would make had they been weighed by what is
 * then seen, against the pick that they make now. Best first; no world helps to predict itself.
 */
export function worthMeasuring(standings: readonly Standing[], { weights, blocks }: Worlds): readonly MeasureWorth[] {
  const seen = blocks.flatMap((block) => (block.seen === null ? [] : [block.seen]));
  if (weights.length < LEAST_WORLDS || seen.length !== blocks.length) return [];
  const rows: Readonly<Record<Measure, readonly Observed[]>> = {
    tenBalls: [observed(seen, "todaysBoard", ERRORS.board)],
    trial: [observed(seen, "dullBoard", ERRORS.board), observed(seen, "smoothBoard", ERRORS.board)],
    speeds: [observed(seen, "speedLostMph", ERRORS.speedMph)],
  };
  return MEASURES.map((measure) => ({ measure, gain: gainOf(standings, weights, rows[measure]) }))
    .filter(({ gain }) => gain >= LEAST_GAIN)
    .sort((a, b) => b.gain - a.gain);
}

interface Observed {
  readonly values: readonly number[];
  readonly sd: number;
}

function observed(seen: readonly SeenInWorlds[], what: keyof SeenInWorlds, sd: number): Observed {
  return { values: seen.flatMap((one) => one[what]), sd };
}

function gainOf(standings: readonly Standing[], weights: readonly number[], seen: readonly Observed[]): number {
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  let gain = 0;
  for (let truth = 0; truth < weights.length; truth++) {
    const before = pickBut(truth, standings, weights);
    const after = pickBut(
      truth,
      standings,
      weights.map((weight, i) => weight * likeness(seen, truth, i)),
    );
    gain += (weights[truth] / total) * (standings[after].drawn[truth] - standings[before].drawn[truth]);
  }
  return gain;
}

function likeness(seen: readonly Observed[], truth: number, world: number): number {
  return Math.exp(-0.5 * seen.reduce((sum, { values, sd }) => sum + ((values[world] - values[truth]) / sd) ** 2, 0));
}

/** The finish of greatest mean over all worlds but one. */
function pickBut(left: number, standings: readonly Standing[], weights: readonly number[]): number {
  const sums = standings.map(({ drawn }) => drawn.reduce((sum, score, i) => (i === left ? sum : sum + weights[i] * score), 0));
  return sums.indexOf(Math.max(...sums));
}
