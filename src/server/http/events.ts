import type { Context } from "hono";
import { streamSSE } from "hono/streaming";
import { Refusal } from "./refusal.ts";

/** Sends one event to one page. */
export type SendEvent = (event: string, data: unknown) => Promise<void>;

/** Tells a page what it wants to hear until the signal ends. */
export type Telling = (send: SendEvent, signal: AbortSignal) => Promise<void>;

export interface EventStreams {
  /** @throws {Refusal} when as many pages listen as may */
  open(context: Context, tell: Telling): Response;
  /** Ends every stream and takes no more. */
  close(): void;
}

/** Comments this often keep a quiet stream from being taken for a dead one, ms. */
const HEARTBEAT_MS = 15_000;

/** @param most streams at the same time */
export function eventStreams(most: number): EventStreams {
  const closing = new AbortController();
  let open = 0;
  return {
    open(context, tell) {
      if (closing.signal.aborted) throw new Refusal("closing");
      if (open >= most) throw new Refusal("tooMany", { detail: `${most} pages listen already.` });
      open += 1;
      return streamSSE(context, async (stream) => {
        const gone = new AbortController();
        stream.onAbort(() => gone.abort());
        const signal = AbortSignal.any([gone.signal, closing.signal]);
        const heartbeat = setInterval(() => void stream.write(": still here\n\n"), HEARTBEAT_MS);
        try {
          await tell((event, data) => stream.writeSSE({ event, data: JSON.stringify(data) }), signal);
        } finally {
          clearInterval(heartbeat);
          open -= 1;
        }
      });
    },
    close: () => closing.abort(),
  };
}

/** Resolves when the signal ends. */
export function ended(signal: AbortSignal): Promise<void> {
  return new Promise((resolve) => {
    if (signal.aborted) resolve();
    else signal.addEventListener("abort", () => resolve(), { once: true });
  });
}
