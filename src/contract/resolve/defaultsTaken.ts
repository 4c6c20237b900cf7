/** Fills in what a job file leaves out, and remembers the path of each field that it filled. */
export class DefaultsTaken {
  readonly #paths: string[] = [];

  /** What was given, else the fallback; null and absent mean "not given" alike. */
  or<Value>(path: string, given: Value | null | undefined, fallback: NoInfer<Value>): Value {
    if (given !== undefined && given !== null) return given;
    this.#paths.push(path);
    return fallback;
  }

  /** Dotted paths of the fields filled in, in the order of the file. */
  get paths(): readonly string[] {
    return [...this.#paths];
  }
}
