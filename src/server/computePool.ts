import { availableParallelism } from "node:os";
import { Worker } from "node:worker_threads";
import { EngineFault } from "#engine/fault";
import type { Executor } from "#tasks/executor";
import type { ResultOf, Unit } from "#tasks/unit";
import { type Outcome, waitLine } from "#tasks/waitLine";
import type { Answer, Call } from "./computeWorker.ts";

/** Threads that compute units, and the way to end them. */
export interface ComputePool extends Executor {
  readonly size: number;
  /** Ends the threads; units still waiting are rejected. */
  close(): Promise<void>;
}

/** The compiled worker stands beside the compiled pool; run from source, the built one is used. */
const WORKER = new URL(import.meta.url.endsWith(".ts") ? "../../dist/server/computeWorker.js" : "./computeWorker.js", import.meta.url);

/**
 * A pool of threads. Units start in the order in which they are asked for; a stopped unit that is already being
 * computed is let run out (a tenth of a second) and its result dropped.
 *
 * @param size threads, ≥ 1
 */
export function computePool(size: number = Math.max(1, Math.min(4, availableParallelism()))): ComputePool {
  const line = waitLine<Worker, Unit, ResultOf<Unit>>((worker, unit) => {
    // Only a thread that has work keeps the process alive.
    worker.ref();
    worker.postMessage({ unit } satisfies Call);
  });
  const start = (): Worker => {
    const worker = new Worker(WORKER, { execArgv: [] });
    worker.unref();
    worker.on("message", (answer: Answer) => {
      worker.unref();
      line.finish(worker, outcomeOf(answer));
    });
    worker.on("error", (error) => {
      // A thread that dies without work could not start at all: another one would not either.
      if (line.lose(worker, error)) workers.splice(workers.indexOf(worker), 1, start());
      else line.rejectWaiting(error);
    });
    line.join(worker);
    return worker;
  };
  const workers: Worker[] = [];
  for (let i = 0; i < size; i++) workers.push(start());

  return {
    size,
    run: <U extends Unit>(unit: U, signal: Parameters<Executor["run"]>[1]) => line.ask(unit, signal) as Promise<ResultOf<U>>,
    async close() {
      line.rejectAll(new Error("The compute pool was closed."));
      await Promise.all(workers.map((worker) => worker.terminate()));
    },
  };
}

function outcomeOf(answer: Answer): Outcome<ResultOf<Unit>> {
  if ("result" in answer) return { reply: answer.result };
  return { reason: answer.problems === null ? new Error(answer.message) : new EngineFault(answer.problems) };
}
