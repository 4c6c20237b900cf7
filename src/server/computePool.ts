import { availableParallelism } from "node:os";
import { Worker } from "node:worker_threads";
import { EngineFault } from "#engine/fault";
import type { Executor, StopSignal } from "#tasks/executor";
import type { ResultOf, Unit } from "#tasks/unit";
import type { Answer, Call } from "./computeWorker.ts";

/** Threads that compute units, and the way to end them. */
export interface ComputePool extends Executor {
  readonly size: number;
  /** Ends the threads; units still waiting are rejected. */
  close(): Promise<void>;
}

interface Job {
  readonly unit: Unit;
  readonly resolve: (value: ResultOf<Unit>) => void;
  readonly reject: (reason: unknown) => void;
  readonly forget: () => void;
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
  const waiting: Job[] = [];
  const idle: Worker[] = [];
  const busy = new Map<Worker, Job>();

  const settle = (worker: Worker, finish: (job: Job) => void): void => {
    const job = busy.get(worker);
    busy.delete(worker);
    if (job === undefined) return;
    job.forget();
    finish(job);
  };
  const start = (): Worker => {
    const worker = new Worker(WORKER, { execArgv: [] });
    worker.unref();
    worker.on("message", (answer: Answer) => {
      settle(worker, (job) => ("result" in answer ? job.resolve(answer.result) : job.reject(faultOf(answer))));
      idle.push(worker);
      next();
    });
    worker.on("error", (error) => {
      // A thread that dies without work could not start at all: another one would not either.
      if (!busy.has(worker)) for (const job of waiting.splice(0)) job.reject(error);
      else {
        settle(worker, (job) => job.reject(error));
        workers.splice(workers.indexOf(worker), 1, start());
        next();
      }
    });
    idle.push(worker);
    return worker;
  };
  const workers: Worker[] = [];
  const next = (): void => {
    while (waiting.length > 0 && idle.length > 0) {
      const [job, worker] = [waiting.shift(), idle.pop()];
      if (job === undefined || worker === undefined) return;
      busy.set(worker, job);
      worker.ref();
      worker.postMessage({ unit: job.unit } satisfies Call);
    }
    for (const worker of idle) worker.unref();
  };
  for (let i = 0; i < size; i++) workers.push(start());

  return {
    size,
    run: <U extends Unit>(unit: U, signal: StopSignal | null) => enqueue(unit, signal, waiting, next) as Promise<ResultOf<U>>,
    async close() {
      for (const job of [...waiting.splice(0), ...busy.values()]) job.reject(new Error("The compute pool was closed."));
      busy.clear();
      await Promise.all(workers.map((worker) => worker.terminate()));
    },
  };
}

/** Puts a unit in the queue; stopping takes it out again or lets its result fall. */
function enqueue(unit: Unit, signal: StopSignal | null, waiting: Job[], next: () => void): Promise<ResultOf<Unit>> {
  return new Promise((resolve, reject) => {
    if (signal?.aborted === true) {
      reject(signal.reason);
      return;
    }
    const stop = (): void => {
      const place = waiting.indexOf(job);
      if (place >= 0) waiting.splice(place, 1);
      reject(signal?.reason);
    };
    const job: Job = { unit, resolve, reject, forget: () => signal?.removeEventListener("abort", stop) };
    signal?.addEventListener("abort", stop, { once: true });
    waiting.push(job);
    next();
  });
}

function faultOf(answer: Exclude<Answer, { result: unknown }>): Error {
  return answer.problems === null ? new Error(answer.message) : new EngineFault(answer.problems);
}
