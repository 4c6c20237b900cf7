import type { ResultOf, Unit } from "./unit.ts";

/** The part of the platform's AbortSignal that is used; the platform's own fits. */
export interface StopSignal {
  readonly aborted: boolean;
  readonly reason: unknown;
  throwIfAborted(): void;
  addEventListener(type: "abort", listener: () => void, options?: { once?: boolean }): void;
  removeEventListener(type: "abort", listener: () => void): void;
}

/** Where units are computed: here, in threads of the server, in workers of the browser. */
export interface Executor {
  /** Settles in any order; rejects with the unit's own error, or with the signal's reason once it is aborted. */
  run<U extends Unit>(unit: U, signal: StopSignal | null): Promise<ResultOf<U>>;
}
