import type { MiddlewareHandler } from "hono";
import { bodyLimit } from "hono/body-limit";
import { Refusal } from "./refusal.ts";
import type { Visitor, VisitorEnv } from "./visitor.ts";

/** What somebody who is not signed in may send: a name and a password. */
const STRANGER_BYTES = 4096;
/** Everybody's bodies that are under way at the same time; a body of no stated length counts as the longest that is taken. */
const MOST_UNDER_WAY = 96_000_000;
/** Of these, what one person may take, or what comes from one address. */
const MOST_OF_ONE = 32_000_000;
/** All strangers together, and those of one address. */
const MOST_OF_STRANGERS = 1_000_000;
const MOST_OF_ONE_STRANGER = 100_000;
/** Within so long a stranger's few bytes are there, ms. */
const STRANGER_MS = 5000;

interface Connection {
  readonly incoming?: { readonly complete: boolean; destroy(): void };
}

/** Bodies that are being received or worked on, by their stated length, so that nobody fills the memory with what never ends. */
export interface BodiesUnderWay {
  /** @param most bytes that a route takes */
  limit(most: number): MiddlewareHandler<VisitorEnv>;
}

export function bodiesUnderWay(): BodiesUnderWay {
  const [all, strangers] = [ledger(MOST_UNDER_WAY, MOST_OF_ONE), ledger(MOST_OF_STRANGERS, MOST_OF_ONE_STRANGER)];
  return {
    limit(most) {
      const [own, strangersOwn] = [exactly(most), exactly(Math.min(most, STRANGER_BYTES))];
      return async (context, next) => {
        const { visitor } = context.var;
        const isStranger = visitor.role === null;
        const limit = isStranger ? strangersOwn : own;
        const stated = statedLength(context.req.header("content-length"), context.req.header("transfer-encoding"), limit.most);
        // What says by itself that it is too long is refused before it takes anybody's room.
        if (stated > limit.most) return tooLarge(limit.most);
        const release = (isStranger ? strangers : all).take(whoseOf(visitor), stated);
        const hurry = isStranger ? cutAfter(STRANGER_MS, (context.env ?? {}) as Connection) : null;
        try {
          return await limit.check(context, next);
        } finally {
          if (hurry !== null) clearTimeout(hurry);
          release();
        }
      };
    },
  };
}

function exactly(most: number): { readonly most: number; readonly check: MiddlewareHandler } {
  return { most, check: bodyLimit({ maxSize: most, onError: () => tooLarge(most) }) };
}

function tooLarge(most: number): never {
  throw new Refusal("tooLarge", { detail: `At most ${most} bytes are taken.` });
}

function statedLength(length: string | undefined, encoding: string | undefined, most: number): number {
  if (encoding !== undefined) return most;
  return length === undefined ? 0 : Number(length);
}

function whoseOf({ session, address }: Visitor): string {
  return session === null ? `address ${address}` : `person ${session.personId}`;
}

function cutAfter(ms: number, { incoming }: Connection): NodeJS.Timeout {
  return setTimeout(() => {
    if (incoming?.complete === false) incoming.destroy();
  }, ms);
}

function ledger(most: number, mostOfOne: number): { take(whose: string, bytes: number): () => void } {
  let all = 0;
  const ofOne = new Map<string, number>();
  return {
    take(whose, bytes) {
      const own = ofOne.get(whose) ?? 0;
      if (all + bytes > most || own + bytes > mostOfOne) throw new Refusal("tooMany", { detail: "Too much is being sent at once." });
      all += bytes;
      ofOne.set(whose, own + bytes);
      return () => {
        all -= bytes;
        const left = (ofOne.get(whose) ?? 0) - bytes;
        if (left > 0) ofOne.set(whose, left);
        else ofOne.delete(whose);
      };
    },
  };
}
