import type { Executor, StopSignal } from "#tasks/executor";
import type { ResultOf, Unit } from "#tasks/unit";
import type { Answer, Call, FieldProblem, ReplyTo } from "./protocol.ts";

/** The engine refused a question that the form let through; the problems say where. */
export class Refused extends Error {
  readonly problems: readonly FieldProblem[];

  constructor(message: string, problems: readonly FieldProblem[]) {
    super(message);
    this.name = "Refused";
    this.problems = problems;
  }
}

export interface WorkerPool extends Executor {
  call<C extends Call>(call: C, signal: StopSignal | null): Promise<ReplyTo<C>>;
}

interface Waiting {
  readonly call: Call;
  readonly resolve: (reply: ReplyTo<Call>) => void;
  readonly reject: (reason: unknown) => void;
}

/** Two workers where the machine has two cores: more would take the page's own thread from it. */
const workerCount = (): number => Math.max(1, Math.min(2, navigator.hardwareConcurrency));

/**
 * Workers that compute units and draw pictures. What a person waits for, reading the form and drawing, goes before
 * units that are still waiting; a stopped call that is already being computed runs out and its result is dropped.
 */
export function workerPool(size: number = workerCount()): WorkerPool {
  const waiting: Waiting[] = [];
  const idle: Worker[] = [];
  const busy = new Map<Worker, Waiting>();
  let number = 0;

  const next = (): void => {
    while (waiting.length > 0 && idle.length > 0) {
      const urgent = waiting.findIndex((w) => w.call.kind !== "unit");
      const [job] = waiting.splice(Math.max(0, urgent), 1);
      const worker = idle.pop();
      if (job === undefined || worker === undefined) return;
      busy.set(worker, job);
      number += 1;
      worker.postMessage({ number, call: job.call });
    }
  };
  const finish = (worker: Worker, settle: (job: Waiting) => void): void => {
    const job = busy.get(worker);
    busy.delete(worker);
    if (job !== undefined) settle(job);
    idle.push(worker);
    next();
  };
  for (let i = 0; i < size; i++) {
    const worker = new Worker(new URL("./computeWorker.ts", import.meta.url), { type: "module" });
    worker.addEventListener("message", (event: MessageEvent<Answer>) => {
      const answer = event.data;
      finish(worker, (job) =>
        "reply" in answer
          ? job.resolve(answer.reply)
          : job.reject(answer.problems === null ? new Error(answer.failed) : new Refused(answer.failed, answer.problems)),
      );
    });
    worker.addEventListener("error", (event) => finish(worker, (job) => job.reject(new Error(event.message))));
    idle.push(worker);
  }

  const call = <C extends Call>(asked: C, signal: StopSignal | null): Promise<ReplyTo<C>> =>
    new Promise((resolve, reject) => {
      if (signal?.aborted === true) {
        reject(signal.reason);
        return;
      }
      const stop = (): void => {
        const place = waiting.indexOf(job);
        if (place >= 0) waiting.splice(place, 1);
        reject(signal?.reason);
      };
      const settled =
        <T>(settle: (value: T) => void) =>
        (value: T): void => {
          signal?.removeEventListener("abort", stop);
          settle(value);
        };
      const job: Waiting = { call: asked, resolve: settled(resolve as (reply: ReplyTo<Call>) => void), reject: settled(reject) };
      signal?.addEventListener("abort", stop, { once: true });
      waiting.push(job);
      next();
    });
  return {
    call,
    run: <U extends Unit>(unit: U, signal: StopSignal | null) => call({ kind: "unit", unit }, signal) as Promise<ResultOf<U>>,
  };
}
