import type { Executor, StopSignal } from "./executor.ts";
import { runUnit } from "./runUnit.ts";
import type { ResultOf, Unit } from "./unit.ts";

/** Computes every unit on the caller's own thread, one after the other. */
export const inlineExecutor: Executor = {
  async run<U extends Unit>(unit: U, signal: StopSignal | null): Promise<ResultOf<U>> {
    await Promise.resolve();
    signal?.throwIfAborted();
    return runUnit(unit);
  },
};
