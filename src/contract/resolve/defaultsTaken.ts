/** Fills in what a job file leaves out, and remembers the path of each field that it filled. */
export class DefaultsTaken {
  readonly #paths: string[];
  readonly #under: string;

  /** @param under path of the part of the file that is filled in, with its dot: `players[0].` */
  constructor(under = "", paths: string[] = []) {
    this.#under = under;
    this.#paths = paths;
  }

  /** What was given, else the fallback; null and absent mean "not given" alike. */
  or<Value>(path: string, given: Value | null | undefined, fallback: NoInfer<Value>): Value {
    if (given !== undefined && given !== null) return given;
    this.#paths.push(`${this.#under}${path}`);
    return fallback;
  }

  /** The same list for a part of the file: `players[0]`. */
  within(part: string): DefaultsTaken {
    return new DefaultsTaken(`${this.#under}${part}.`, this.#paths);
  }

  /** Dotted paths of the fields filled in, in the order of the file. */
  get paths(): readonly string[] {
    return [...this.#paths];
  }
}
