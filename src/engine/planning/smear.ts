import type { Spread } from "../delivery/bowler.ts";
import type { GridAxis } from "../pins/carryGrid.ts";

/** The bowler's scatter about a line is followed so many standard deviations far. */
export const MARGIN_SD = 3;

/** Smears a map by the bowler's scatter in launch and laydown, in place: what is thrown on a line lands on its neighbours too. */
export function smear(values: Float64Array, laydown: GridAxis, launch: GridAxis, spread: Spread): void {
  const round = weightsOf(spread.launchAngleDeg / launch.step);
  const across = weightsOf(spread.laydownBoards / laydown.step);
  const line = new Float64Array(Math.max(laydown.count, launch.count));
  for (let row = 0; row < laydown.count; row++) smearLine(values, row * launch.count, 1, launch.count, round, line);
  for (let column = 0; column < launch.count; column++) smearLine(values, column, launch.count, laydown.count, across, line);
}

/** Weights of a normal scatter of `sd` steps, from the middle outwards; they sum to one over both sides. */
function weightsOf(sd: number): Float64Array {
  const reach = Math.ceil(MARGIN_SD * sd);
  const weights = Float64Array.from({ length: reach + 1 }, (_, k) => (sd > 0 ? Math.exp(-0.5 * (k / sd) ** 2) : 1));
  const total = weights.reduce((sum, weight, k) => sum + (k === 0 ? weight : 2 * weight), 0);
  return weights.map((weight) => weight / total);
}

function smearLine(values: Float64Array, first: number, stride: number, count: number, weights: Float64Array, line: Float64Array): void {
  let [from, to] = [count, -1];
  for (let i = 0; i < count; i++) {
    line[i] = values[first + i * stride];
    if (line[i] === 0) continue;
    if (to < 0) from = i;
    to = i;
  }
  // Most of a line is far from every strike, and stays as it is.
  const reach = weights.length - 1;
  for (let i = Math.max(0, from - reach); i <= Math.min(count - 1, to + reach); i++) {
    let sum = weights[0] * line[i];
    for (let k = 1; k < weights.length; k++) {
      if (i >= k) sum += weights[k] * line[i - k];
      if (i + k < count) sum += weights[k] * line[i + k];
    }
    values[first + i * stride] = sum;
  }
}
