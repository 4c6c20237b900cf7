/** What the command line touches outside itself; the entry file hands in the real one, tests their own. */
export interface World {
  /** Where the answer goes. */
  readonly print: (text: string) => void;
  /** Where a picture goes that is drawn to standard output. */
  readonly draw: (svg: string) => void;
  /** Where progress and complaints go. */
  readonly tell: (text: string) => void;
  /** Whether progress may overwrite its own line. */
  readonly isTerminal: boolean;
  /** Threads a plan uses unless told otherwise; 1 computes in the caller's own thread. */
  readonly workers: number;
  /** Now, milliseconds since 1970. */
  readonly now: () => number;
  /** So many bytes of chance, for ids. */
  readonly randomBytes: (count: number) => Uint8Array;
}

/** 0 answered (a message in place of a pick is an answer), 1 our fault, 2 bad input or usage, 3 a check that failed. */
export type ExitCode = 0 | 1 | 2 | 3;
