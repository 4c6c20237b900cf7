import type { StopSignal } from "./executor.ts";

/** How a call ended: with its reply, or with the reason why there is none. */
export type Outcome<Reply> = { readonly reply: Reply } | { readonly reason: unknown };

/** Calls that wait for a free worker, in the order in which they came. */
export interface WaitLine<Worker, Call, Reply> {
  /** Settles as the worker's outcome says; rejects with the signal's reason once it is stopped. */
  ask(call: Call, signal: StopSignal | null): Promise<Reply>;
  /** A new worker, free. */
  join(worker: Worker): void;
  /** The worker is done with its call, and free for the next. */
  finish(worker: Worker, outcome: Outcome<Reply>): void;
  /** The worker is gone for good; its call, if it had one, is rejected. Says whether it had one. */
  lose(worker: Worker, reason: unknown): boolean;
  /** Rejects the calls that no worker has taken. */
  rejectWaiting(reason: unknown): void;
  /** Rejects every call, taken or not. */
  rejectAll(reason: unknown): void;
}

interface Waiting<Call, Reply> {
  readonly call: Call;
  settle(outcome: Outcome<Reply>): void;
}

/**
 * One line before several workers, whatever a worker is. A stopped call that waits leaves the line; one that is being
 * worked on runs out, and its outcome is dropped.
 *
 * @param send hands a call to a free worker
 */
export function waitLine<Worker, Call, Reply>(send: (worker: Worker, call: Call) => void): WaitLine<Worker, Call, Reply> {
  const waiting: Waiting<Call, Reply>[] = [];
  const idle: Worker[] = [];
  const busy = new Map<Worker, Waiting<Call, Reply>>();

  const next = (): void => {
    while (waiting.length > 0 && idle.length > 0) {
      const [asked, worker] = [waiting.shift(), idle.pop()];
      if (asked === undefined || worker === undefined) return;
      busy.set(worker, asked);
      send(worker, asked.call);
    }
  };
  const settle = (worker: Worker, outcome: Outcome<Reply>): boolean => {
    const asked = busy.get(worker);
    busy.delete(worker);
    asked?.settle(outcome);
    return asked !== undefined;
  };
  const join = (worker: Worker): void => {
    idle.push(worker);
    next();
  };
  const rejectWaiting = (reason: unknown): void => {
    for (const asked of waiting.splice(0)) asked.settle({ reason });
  };
  return {
    ask: (call, signal) => asking(call, signal, waiting, next),
    join,
    finish(worker, outcome) {
      settle(worker, outcome);
      join(worker);
    },
    lose(worker, reason) {
      const place = idle.indexOf(worker);
      if (place >= 0) idle.splice(place, 1);
      return settle(worker, { reason });
    },
    rejectWaiting,
    rejectAll(reason) {
      rejectWaiting(reason);
      for (const worker of [...busy.keys()]) settle(worker, { reason });
    },
  };
}

function asking<Call, Reply>(call: Call, signal: StopSignal | null, waiting: Waiting<Call, Reply>[], next: () => void): Promise<Reply> {
  return new Promise((resolve, reject) => {
    if (signal?.aborted === true) {
      reject(signal.reason);
      return;
    }
    const stop = (): void => {
      const place = waiting.indexOf(asked);
      if (place >= 0) waiting.splice(place, 1);
      reject(signal?.reason);
    };
    const asked: Waiting<Call, Reply> = {
      call,
      settle(outcome) {
        signal?.removeEventListener("abort", stop);
        if ("reply" in outcome) resolve(outcome.reply);
        else reject(outcome.reason);
      },
    };
    signal?.addEventListener("abort", stop, { once: true });
    waiting.push(asked);
    next();
  });
}
