import { Session } from "node:inspector";

/*
 * How much work something is, as a count that is the same at every run: how often each block of JavaScript in the program and the libraries it stands
 * on is entered (V8's precise coverage), and how many letters or items the built-in functions are led over, which have no blocks to be counted.
 */

/** Whose blocks count: the program's and its libraries', also functions that those make while they run; not the tests' and not the test runner's. */
const COUNTS = /^$|\/src\/|\/node_modules\/(?!.*(?:vitest|vite|chai|tinyspy))/;

interface Coverage {
  readonly result: readonly {
    readonly url: string;
    readonly functions: readonly { readonly ranges: readonly { readonly count: number }[] }[];
  }[];
}

export interface Counter {
  /** Runs something and counts it. */
  of(work: () => unknown): Promise<number>;
  end(): void;
}

/** Counts from now on until it is ended; one at a time. */
export function counter(): Counter {
  const session = new Session();
  session.connect();
  const builtIns = countedBuiltIns();
  session.post("Profiler.enable");
  session.post("Profiler.startPreciseCoverage", { callCount: true, detailed: true });
  return {
    async of(work) {
      blocksOf(session);
      builtIns.reset();
      await work();
      const led = builtIns.led();
      return blocksOf(session) + led;
    },
    end() {
      builtIns.restore();
      session.post("Profiler.stopPreciseCoverage");
      session.disconnect();
    },
  };
}

/** Since it was asked last. */
function blocksOf(session: Session): number {
  let blocks = 0;
  session.post("Profiler.takePreciseCoverage", (fault, coverage) => {
    if (fault !== null) throw fault;
    for (const { url, functions } of (coverage as unknown as Coverage).result)
      if (COUNTS.test(url)) for (const { ranges } of functions) for (const { count } of ranges) blocks += count;
  });
  return blocks;
}

// biome-ignore lint/suspicious/noExplicitAny: whatever the built-in function takes and gives
type BuiltIn = (this: any, ...given: any[]) => any;

/** What a call of a built-in function is led over: letters or items. */
const LED: readonly (readonly [object, string, (self: { length: number }, given: unknown[], answer: unknown) => number])[] = [
  ...["indexOf", "includes", "lastIndexOf"].flatMap((name) => [
    [String.prototype, name, foundAt] as const,
    [Array.prototype, name, foundAt] as const,
  ]),
  ...["toLowerCase", "toUpperCase", "normalize", "trim", "split"].map(
    (name) => [String.prototype, name, (self: { length: number }) => self.length] as const,
  ),
  ...["slice", "concat", "join", "shift", "unshift", "splice", "toSorted", "sort"].map(
    (name) => [Array.prototype, name, (self: { length: number }) => self.length] as const,
  ),
  [RegExp.prototype, "exec", searched],
];

function foundAt(self: { length: number }, given: unknown[], answer: unknown): number {
  const from = typeof given[1] === "number" ? given[1] : 0;
  return typeof answer === "number" && answer >= 0 ? Math.abs(answer - from) + 1 : Math.max(0, self.length - from);
}

/** From where it began to the end of what was found; of a pattern that holds fast to one place, what was found. */
function searched(self: unknown, given: unknown[], answer: unknown): number {
  const { sticky } = self as RegExp;
  const text = String(given[0]);
  const found = answer as RegExpExecArray | null;
  if (found === null) return sticky ? 1 : text.length;
  return found[0].length + (sticky ? 0 : found.index - (began.get(self as RegExp) ?? 0));
}

/** Where the search under way began. */
const began = new WeakMap<RegExp, number>();

function countedBuiltIns(): { reset(): void; led(): number; restore(): void } {
  let led = 0;
  const undo = LED.map(([prototype, name, over]) => {
    const plain = Reflect.get(prototype, name) as BuiltIn;
    const counted: BuiltIn = function (...given) {
      if (this instanceof RegExp) began.set(this, this.global ? this.lastIndex : 0);
      const length = this?.length ?? 0;
      const answer = plain.apply(this, given);
      led += over(this instanceof RegExp ? (this as unknown as { length: number }) : { length }, given, answer);
      return answer;
    };
    Object.defineProperty(prototype, name, { value: counted, writable: true, configurable: true });
    return () => Object.defineProperty(prototype, name, { value: plain, writable: true, configurable: true });
  });
  return {
    reset() {
      led = 0;
    },
    led: () => led,
    restore() {
      for (const one of undo) one();
    },
  };
}
