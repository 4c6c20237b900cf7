import type { TestPostgres } from "../../test/records/postgres.ts";

/** Something bad that is done to a shop, again and again, and what came of it. */
export interface Drill {
  /** What is done, as the table names it: "Power cut while writing". */
  readonly name: string;
  /** Runs it once on each database it applies to. Bounded in time and memory; sends nothing beyond loopback. */
  run(setting: Setting): Promise<readonly Outcome[]>;
}

export interface Setting {
  readonly seed: number;
  /** `short`: a few rounds, seconds each, as the gate runs it; `long`: the figures that are published. */
  readonly size: "short" | "long";
  /** Null where no PostgreSQL is to be had: drills then run on SQLite alone. */
  readonly postgres: TestPostgres | null;
}

/** A row of the table. Null where a figure does not apply. */
export interface Outcome {
  readonly on: "SQLite" | "PostgreSQL" | "both" | "neither";
  readonly rounds: number;
  /** Writes that were answered with success. */
  readonly acknowledged: number | null;
  /** Of these, not there when read again. */
  readonly lost: number | null;
  /** Of these, there more than once. */
  readonly doubled: number | null;
  /** The longest time in which somebody else got no answer, ms. */
  readonly longestFreezeMs: number | null;
  /** Most memory that the server kept, MB. */
  readonly memoryMb: number | null;
  /** What the figures do not say, in a few words: "back after 0.4 s at most". */
  readonly note: string;
  /** What did not hold; empty where everything did. */
  readonly broken: readonly string[];
}
