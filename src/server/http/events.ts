import type { Context } from "hono";
import { streamSSE } from "hono/streaming";
import { Refusal } from "./refusal.ts";
import type { Visitor } from "./visitor.ts";

/** Sends one event to one page. */
export type SendEvent = (event: string, data: unknown) => Promise<void>;

/** Tells a page what it wants to hear until the signal ends. */
export type EventProducer = (send: SendEvent, signal: AbortSignal) => Promise<void>;

export interface EventStreams {
  /** @throws {Refusal} when as many pages listen as may, of everybody or of this person */
  open(context: Context, visitor: Pick<Visitor, "isStillIn" | "session">, tell: EventProducer): Response;
  /** How many are open. */
  count(): number;
  /** Ends the streams of those who may no longer be here. */
  lookAgain(): void;
  /** Ends every stream and takes no more. */
  close(): void;
}

/** Comments this often keep a quiet stream from being taken for a dead one, ms. */
const HEARTBEAT_MS = 15_000;

/**
 * @param most streams at the same time
 * @param mostOfOne of these, those of one person who is signed in
 * @param broke told of what ended a stream that its page still listened to; the page connects again by itself
 */
export function eventStreams(most: number, mostOfOne: number, broke: (error: unknown) => void): EventStreams {
  const closing = new AbortController();
  /** Each with the person whose it is; null on a machine whose shop has no passwords. */
  const open = new Map<() => void, string | null>();
  return {
    open(context, visitor, tell) {
      if (closing.signal.aborted) throw new Refusal("closing");
      if (open.size >= most) throw new Refusal("tooMany", { detail: `${most} pages listen already.` });
      const whose = visitor.session?.personId ?? null;
      const own = whose === null ? 0 : [...open.values()].filter((one) => one === whose).length;
      if (own >= mostOfOne) throw new Refusal("tooMany", { detail: `${mostOfOne} pages of this person listen already.` });
      const gone = new AbortController();
      const look = (): void => {
        visitor.isStillIn().then(
          (isIn) => (isIn ? undefined : gone.abort()),
          // A database that does not answer now is asked again at the next beat.
          () => undefined,
        );
      };
      open.set(look, whose);
      return streamSSE(context, async (stream) => {
        stream.onAbort(() => gone.abort());
        const signal = AbortSignal.any([gone.signal, closing.signal]);
        const heartbeat = setInterval(() => {
          look();
          void stream.write(": still here\n\n");
        }, HEARTBEAT_MS);
        try {
          await tell((event, data) => stream.writeSSE({ event, data: JSON.stringify(data) }), signal);
        } catch (error) {
          if (!signal.aborted) broke(error);
        } finally {
          clearInterval(heartbeat);
          open.delete(look);
        }
      });
    },
    count: () => open.size,
    lookAgain() {
      for (const look of open.keys()) look();
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
