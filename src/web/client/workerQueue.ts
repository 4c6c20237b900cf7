import type { StopSignal } from "#tasks/executor";
import { type Outcome, waitLine } from "#tasks/waitLine";
import { FRAME } from "#words/en/screens";
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

/** The worker's file did not come. */
class FileMissing extends Error {
  constructor() {
    super(FRAME.fileMissing);
    this.name = "FileMissing";
  }
}

export interface WorkerQueue {
  /** Rejects with {@link Refused}, with an Error of our own fault, or with the signal's reason. */
  call<C extends Call>(call: C, signal: StopSignal | null): Promise<ReplyTo<C>>;
}

/**
 * Workers that take calls in the order in which they come; a stopped call that is already being worked on runs out and its result is dropped. A worker
 * that breaks is answered for with a fault and replaced: what is asked next does not wait for it for ever. One whose file did not come is tried once more:
 * the network may have broken off in the middle.
 */
export function workerQueue(size: number): WorkerQueue {
  let number = 0;
  const workers = new Set<Worker>();
  const line = waitLine<Worker, Call, ReplyTo<Call>>((worker, call) => {
    number += 1;
    worker.postMessage({ number, call });
  });
  const fill = (): void => {
    while (workers.size < size) start();
  };
  const start = (): void => {
    // Its name is the language that it speaks.
    const worker = new Worker(new URL("./computeWorker.ts", import.meta.url), { type: "module", name: document.documentElement.lang });
    workers.add(worker);
    const lose = (reason: Error): void => {
      workers.delete(worker);
      worker.terminate();
      // One that breaks without a call is replaced when the next call comes: without the server's files another one would break as well.
      if (line.lose(worker, reason)) fill();
    };
    worker.addEventListener("message", ({ data }: MessageEvent<Answer | null>) =>
      data === null ? lose(new FileMissing()) : line.finish(worker, outcomeOf(data)),
    );
    worker.addEventListener("error", (event) => lose(event instanceof ErrorEvent ? new Error(event.message) : new FileMissing()));
    line.join(worker);
  };
  const ask = (call: Call, signal: StopSignal | null): Promise<ReplyTo<Call>> => {
    fill();
    return line.ask(call, signal);
  };
  return {
    call: <C extends Call>(call: C, signal: StopSignal | null) =>
      ask(call, signal).catch((error: unknown) => {
        if (error instanceof FileMissing) return ask(call, signal);
        throw error;
      }) as Promise<ReplyTo<C>>,
  };
}

function outcomeOf(answer: Answer): Outcome<ReplyTo<Call>> {
  if ("reply" in answer) return { reply: answer.reply };
  return { reason: answer.problems === null ? new Error(answer.failed) : new Refused(answer.failed, answer.problems) };
}
