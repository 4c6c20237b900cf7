/** The mean of numbers by what each counts for; 0 where none counts. */
export function weightedMean(values: readonly number[], weights: readonly number[]): number {
  let [sum, total] = [0, 0];
  for (let i = 0; i < values.length; i++) {
    sum += weights[i] * values[i];
    total += weights[i];
  }
  return total > 0 ? sum / total : 0;
}
