/** Counts up with each program that keeps things in a way that the ones before would spoil by writing. */
export const FORMAT = 1;
/** The oldest format whose programs may still write what this program keeps. */
export const LEAST_WRITER = 1;
