import { Worker } from "node:worker_threads";
import { RecordsFault } from "#contract/records/fault";
import { decoyOf, type HashCost, SALT_BYTES, type SecretHasher } from "./hasher.ts";
import type { HashAnswer, HashCall } from "./hashWorker.ts";

/** The compiled thread stands beside the compiled caller; run from source, the built one is used. */
const WORKER = new URL(
  import.meta.url.endsWith(".ts") ? "../../../dist/records/accounts/hashWorker.js" : "./hashWorker.js",
  import.meta.url,
);
/** So many may wait at once: a flood of tries must not fill the memory. */
const MOST_WAITING = 16;

type Unnumbered<T> = T extends unknown ? Omit<T, "id"> : never;
interface Waiting {
  resolve(value: string | boolean): void;
  reject(reason: Error): void;
}

/**
 * Hashes on a thread of its own, one after the other: a hash takes 40 to 80 ms of a processor, and nobody else is to wait for that.
 * The thread starts with the first one.
 */
export function hasherThread(cost: HashCost, randomBytes: (count: number) => Uint8Array): SecretHasher {
  const waiting = new Map<number, Waiting>();
  let worker: Worker | null = null;
  let last = 0;

  const lose = (lost: Worker, error: Error): void => {
    if (worker === lost) worker = null;
    for (const { reject } of waiting.values()) reject(error);
    waiting.clear();
  };
  const start = (): Worker => {
    const started = new Worker(WORKER, { execArgv: [] });
    started.on("message", (answer: HashAnswer) => {
      const asker = waiting.get(answer.id);
      waiting.delete(answer.id);
      if (waiting.size === 0) started.unref();
      if ("value" in answer) asker?.resolve(answer.value);
      else asker?.reject(new Error(`The hash failed: ${answer.message}`));
    });
    started.on("error", (error) => lose(started, error));
    return started;
  };
  const ask = (call: Unnumbered<HashCall>): Promise<string | boolean> => {
    if (waiting.size >= MOST_WAITING) return Promise.reject(new RecordsFault("busy", "passwords"));
    worker ??= start();
    last += 1;
    const id = last;
    const { promise, resolve, reject } = settled();
    waiting.set(id, { resolve, reject });
    worker.ref();
    worker.postMessage({ id, ...call } as HashCall);
    return promise;
  };
  return {
    hash: async (secret) => String(await ask({ secret, salt: randomBytes(SALT_BYTES), cost })),
    isRight: async (secret, encoded) => (await ask({ secret, encoded })) === true,
    decoy: decoyOf(cost),
    async close() {
      const ending = worker;
      worker = null;
      if (ending === null) return;
      lose(ending, new Error("The records were closed."));
      await ending.terminate();
    },
  };
}

function settled() {
  let resolve: Waiting["resolve"] = () => undefined;
  let reject: Waiting["reject"] = () => undefined;
  const promise = new Promise<string | boolean>((right, wrong) => {
    resolve = right;
    reject = wrong;
  });
  return { promise, resolve, reject };
}
