/** One line of the report. */
export interface Row {
  readonly what: string;
  readonly value: string;
  /** Against a reference measured in the same run; null where there is none. */
  readonly ratio: Ratio | null;
}

/** How we stand to a reference, round by round: what a machine does beside it falls on both. */
export interface Ratio {
  readonly rounds: readonly number[];
  /** What one of it is: "the speed of a plain loop". */
  readonly of: string;
  readonly better: "higher" | "lower";
}

export function median(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b);
  const middle = Math.floor(sorted.length / 2);
  return sorted.length % 2 === 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
}

export function secondsOf(work: () => unknown): number {
  const start = performance.now();
  work();
  return (performance.now() - start) / 1000;
}
