import type { Records } from "#records/records";
import { ended, type Telling } from "./http/events.ts";
import { queueOf } from "./queue.ts";

/** Kinds of things whose change can be seen in the queue. */
const SHOWN = new Set(["tickets", "visits", "balls", "bowlers"]);
/** Changes that come close together are told as one, ms. */
const GATHER_MS = 50;

/** Tells the queue as it is, and again after every change of something that is shown in it. */
export function hearQueue(records: Records): Telling {
  return async (send, signal) => {
    let timer: NodeJS.Timeout | null = null;
    let isTelling = Promise.resolve();
    const tell = (): void => {
      timer = null;
      // One after the other, so that the last event is the latest queue.
      isTelling = isTelling.then(async () => {
        if (!signal.aborted) await send("queue", await queueOf(records));
      });
      isTelling.catch(() => undefined);
    };
    const stop = records.watch(({ kind }) => {
      if (SHOWN.has(kind)) timer ??= setTimeout(tell, GATHER_MS);
    });
    tell();
    await ended(signal);
    stop();
    if (timer !== null) clearTimeout(timer);
    await isTelling;
  };
}
