import type { Spread } from "../delivery/bowler.ts";
import type { GridAxis } from "../pins/carryGrid.ts";

/** The bowler's scatter about a line is followed so many standard deviations far. */
export const MARGIN_SD = 3;

/** Smears a map by the bowler's scatter in launch and laydown, in place: what is thrown on a line lands on its neighbours too. */
export function smear(values: Float64Array, laydown: GridAxis, launch: GridAxis, spread: Spread): void {
  smearRows(values, laydown.count, launch.count, weightsOf(spread.launchAngleDeg / launch.step));
  smearAcross(values, laydown.count, launch.count, weightsOf(spread.laydownBoards / laydown.step));
}

/** Weights of a normal scatter of `sd` steps, from the middle outwards; they sum to one over both sides. */
function weightsOf(sd: number): Float64Array {
  const reach = Math.ceil(MARGIN_SD * sd);
  const weights = Float64Array.from({ length: reach + 1 }, (_, k) => (sd > 0 ? Math.exp(-0.5 * (k / sd) ** 2) : 1));
  const total = weights.reduce((sum, weight, k) => sum + (k === 0 ? weight : 2 * weight), 0);
  return weights.map((weight) => weight / total);
}

/** Along each row. Most of a row is far from every strike, and stays as it is. */
function smearRows(values: Float64Array, rows: number, columns: number, weights: Float64Array): void {
  const reach = weights.length - 1;
  const line = new Float64Array(columns + 2 * reach);
  for (let row = 0; row < rows; row++) {
    const start = row * columns;
    const [from, to] = filled(values, start, columns);
    for (let i = from; i <= to; i++) line[reach + i] = values[start + i];
    for (let i = Math.max(0, from - reach); i <= Math.min(columns - 1, to + reach); i++) {
      const at = reach + i;
      let sum = weights[0] * line[at];
      for (let k = 1; k <= reach; k++) sum += weights[k] * (line[at - k] + line[at + k]);
      values[start + i] = sum;
    }
    line.fill(0, reach + from, reach + to + 1);
  }
}

/** From row to row. */
function smearAcross(values: Float64Array, rows: number, columns: number, weights: Float64Array): void {
  const before = values.slice();
  values.fill(0);
  for (let from = 0; from < rows; from++) {
    const [first, last] = filled(before, from * columns, columns);
    for (let to = Math.max(0, from - weights.length + 1); to < Math.min(rows, from + weights.length); to++) {
      const weight = weights[Math.abs(to - from)];
      const [source, target] = [from * columns, to * columns];
      for (let i = first; i <= last; i++) values[target + i] += weight * before[source + i];
    }
  }
}

/** The first and the last place of a row that are not zero; of an empty row [count, −1]. */
function filled(values: Float64Array, start: number, count: number): readonly [first: number, last: number] {
  let first = 0;
  while (first < count && values[start + first] === 0) first++;
  if (first === count) return [count, -1];
  let last = count - 1;
  while (values[start + last] === 0) last--;
  return [first, last];
}
