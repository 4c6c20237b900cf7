/** Counts up with each program that keeps things in a way that the ones before would spoil by writing. 2: taxes in thousandths of a percent, which 1 took for none. */
export const FORMAT = 2;
/** The oldest format whose programs may still write what this program keeps. */
export const LEAST_WRITER = 2;
