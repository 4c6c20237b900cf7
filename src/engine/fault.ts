/** One thing that is wrong with an input: where, what stood there, and what is allowed. Text is made in `words/`. */
export interface Problem {
  /** Dotted path of the field in the question, e.g. `bowler.speedMph`. */
  readonly path: string;
  readonly value: unknown;
  /** What is allowed, in the notation of the field: `0 < x ≤ 40`, `one of solid, hybrid`. */
  readonly allowed: string;
}

/** The only error the engine throws on purpose: the question itself cannot be answered as put. */
export class EngineFault extends Error {
  readonly problems: readonly Problem[];

  constructor(problems: readonly Problem[]) {
    super(problems.map((p) => `${p.path}: ${String(p.value)}, allowed: ${p.allowed}`).join("; "));
    this.name = "EngineFault";
    this.problems = problems;
  }
}

/** Throws an {@link EngineFault} for one field. */
export function refuse(path: string, value: unknown, allowed: string): never {
  throw new EngineFault([{ path, value, allowed }]);
}
