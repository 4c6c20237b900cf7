import { type EventProducer, ended } from "./http/events.ts";
import type { QueueBook } from "./queue.ts";

/** Changes that come close together are told as one, ms: a page that listens wants the queue, not every step to it. */
const GATHER_MS = 200;
/** A queue that cannot be read now is read again so much later, ms: a page takes a stream that is open for one that tells. */
const AGAIN_MS = 1000;

/** Tells the queue as it is, and again after every change of something that is shown in it. */
export function hearQueue(queue: QueueBook): EventProducer {
  return async (send, signal) => {
    let timer: NodeJS.Timeout | null = null;
    let sending = Promise.resolve();
    const tell = (): void => {
      timer = null;
      // One after the other, so that the last event is the latest queue.
      sending = sending
        .then(async () => {
          if (!signal.aborted) await send("queue", await queue.now());
        })
        .catch(() => {
          if (!signal.aborted) timer ??= setTimeout(tell, AGAIN_MS);
        });
    };
    const stop = queue.watch(() => {
      timer ??= setTimeout(tell, GATHER_MS);
    });
    tell();
    await ended(signal);
    stop();
    if (timer !== null) clearTimeout(timer);
    await sending;
  };
}
