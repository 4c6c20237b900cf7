/** A figure got from a measurement, with the ends that its reading error allows: a frame more or less, the edge of a mark, a display's last digit. */
export interface Measured {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

/** One thing read off, and how far the reading may be out either way, ≥ 0. */
export interface ReadOff {
  readonly value: number;
  readonly within: number;
}

/**
 * A figure computed from readings. Each reading is moved to both of its ends with the others held; what they move the figure by is added in
 * quadrature, upward and downward apart, so that with one reading the ends are exactly the figure at that reading's ends.
 */
export function measuredFrom(readings: readonly ReadOff[], figure: (values: readonly number[]) => number): Measured {
  const values = readings.map(({ value }) => value);
  const value = figure(values);
  let down = 0;
  let up = 0;
  readings.forEach(({ within }, i) => {
    if (within === 0) return;
    const ends = [-within, within].map((off) => figure(values.with(i, values[i] + off)) - value);
    down += Math.min(0, ...ends) ** 2;
    up += Math.max(0, ...ends) ** 2;
  });
  return { value, low: value - Math.sqrt(down), high: value + Math.sqrt(up) };
}

/**
 * Standard deviation of the reading error: ends of a difference of two readings, each anywhere within half of them (a count of frames), are √6 standard
 * deviations away. For other readings this is rather too small, so that less of a bowler's spread is put down to reading.
 */
export function readingSd({ low, high }: Measured): number {
  return (high - low) / 2 / Math.sqrt(6);
}
