/** Where a number comes from: printed beside every check. */
export type Provenance = "published" | "computed" | "memory" | "common practice";

/**
 * One thing known from outside the program, and how the program says it. The same list is read twice: by the gate (facts.test.ts) and by the
 * report (docs/validation.md).
 */
export interface Fact {
  readonly topic: string;
  readonly says: string;
  readonly source: string;
  readonly provenance: Provenance;
  readonly unit: string;
  /** A number, held to `within`, or a band. */
  readonly known: number | readonly [low: number, high: number];
  /** Just above what is achieved. Absolute, in the fact's unit; not used for bands. */
  readonly within: number;
  readonly predict: () => number;
}

export interface Verdict {
  readonly fact: Fact;
  readonly predicted: number;
  readonly error: number;
  readonly holds: boolean;
}

/** The one comparator. A prediction that is not a number never holds. */
export function judge(fact: Fact): Verdict {
  const predicted = fact.predict();
  const error = typeof fact.known === "number" ? predicted - fact.known : outside(predicted, fact.known);
  const holds = Number.isFinite(predicted) && (typeof fact.known === "number" ? Math.abs(error) <= fact.within : error === 0);
  return { fact, predicted, error, holds };
}

function outside(value: number, [low, high]: readonly [number, number]): number {
  return value < low ? value - low : value > high ? value - high : 0;
}
