import type { Executor, StopSignal } from "#tasks/executor";
import type { ResultOf, Unit } from "#tasks/unit";
import type { Call, ReplyTo } from "./protocol.ts";
import { type WorkerQueue, workerQueue } from "./workerQueue.ts";

export interface WorkerPool extends Executor {
  call<C extends Call>(call: C, signal: StopSignal | null): Promise<ReplyTo<C>>;
}

/** Two workers where the machine has two cores: more would take the page's own thread from it. */
const unitWorkers = (): number => Math.max(1, Math.min(2, navigator.hardwareConcurrency));

/**
 * The page's workers. What a person waits for, reading the form and drawing, has a worker of its own, so that it
 * never stands behind units of the computation. They are loaded when the first call comes: most rooms need none of them.
 */
export function workerPool(): WorkerPool {
  const reading = whenAsked(() => workerQueue(1));
  const computing = whenAsked(() => workerQueue(unitWorkers()));
  return {
    call: (call, signal) => reading().call(call, signal),
    run: <U extends Unit>(unit: U, signal: StopSignal | null) => computing().call({ kind: "unit", unit }, signal) as Promise<ResultOf<U>>,
  };
}

function whenAsked(begin: () => WorkerQueue): () => WorkerQueue {
  let begun: WorkerQueue | null = null;
  return () => {
    begun ??= begin();
    return begun;
  };
}
