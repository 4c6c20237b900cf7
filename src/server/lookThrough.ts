import type { Records } from "#records/records";
import { withoutWords } from "./http/requestLog.ts";
import type { Log } from "./log.ts";

/** It waits until the page is up. */
const FIRST_MS = 5000;

/**
 * Looks once through everything that is kept, so that health tells what cannot be read before somebody misses it.
 *
 * @returns stops it, and waits until it has
 */
export function lookThroughOnce({ unreadable }: Pick<Records, "unreadable">, log: Log): () => Promise<void> {
  const stopped = new AbortController();
  let underWay = Promise.resolve();
  const look = async (): Promise<void> => {
    try {
      const found = await unreadable.lookThrough(stopped.signal);
      for (const { kind, id } of found) log("error", { event: "unreadable", kind, id });
    } catch (error) {
      log("error", { event: "unreadable", ...withoutWords(error) });
    }
  };
  const first = setTimeout(() => {
    underWay = look();
  }, FIRST_MS).unref();
  return () => {
    stopped.abort();
    clearTimeout(first);
    return underWay;
  };
}
