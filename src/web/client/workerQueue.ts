import type { StopSignal } from "#tasks/executor";
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

export interface WorkerQueue {
  /** Rejects with {@link Refused}, with an Error of our own fault, or with the signal's reason. */
  call<C extends Call>(call: C, signal: StopSignal | null): Promise<ReplyTo<C>>;
}

interface Waiting {
  readonly call: Call;
  readonly resolve: (reply: ReplyTo<Call>) => void;
  readonly reject: (reason: unknown) => void;
}

/** Workers that take calls in the order in which they come; a stopped call that is already being worked on runs out and its result is dropped. */
export function workerQueue(size: number): WorkerQueue {
  const waiting: Waiting[] = [];
  const idle: Worker[] = [];
  const busy = new Map<Worker, Waiting>();
  let number = 0;

  const next = (): void => {
    while (waiting.length > 0 && idle.length > 0) {
      const [job, worker] = [waiting.shift(), idle.pop()];
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
    worker.addEventListener("message", (event: MessageEvent<Answer>) => finish(worker, (job) => settleWith(job, event.data)));
    worker.addEventListener("error", (event) => finish(worker, (job) => job.reject(new Error(event.message))));
    idle.push(worker);
  }
  return { call: (call, signal) => enqueued(call, signal, waiting, next) };
}

function settleWith(job: Waiting, answer: Answer): void {
  if ("reply" in answer) job.resolve(answer.reply);
  else job.reject(answer.problems === null ? new Error(answer.failed) : new Refused(answer.failed, answer.problems));
}

function enqueued<C extends Call>(call: C, signal: StopSignal | null, waiting: Waiting[], next: () => void): Promise<ReplyTo<C>> {
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
    const settled =
      <T>(settle: (value: T) => void) =>
      (value: T): void => {
        signal?.removeEventListener("abort", stop);
        settle(value);
      };
    const job: Waiting = { call, resolve: settled(resolve as (reply: ReplyTo<Call>) => void), reject: settled(reject) };
    signal?.addEventListener("abort", stop, { once: true });
    waiting.push(job);
    next();
  });
}
