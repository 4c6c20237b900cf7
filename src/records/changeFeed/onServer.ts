import { setTimeout as sleep } from "node:timers/promises";
import { sql } from "kysely";
import type pg from "pg";
import { z } from "zod";
import { THING_KINDS } from "#contract/records/auditEntry";
import { connectAlone, holdOpen, holdOpenWithin } from "../database/postgres.ts";
import { type ChangeFeed, changeFeedHere, type Noted, seenBy, type Written } from "./changeFeed.ts";

const CHANNEL = "gritwright";
/** PostgreSQL takes up to 8000 bytes in one notice; one of these takes less than 70. */
const MOST_IN_NOTICE = 100;
/** Where more was written at once, each kind is told as a whole. */
const MOST_TOLD = 500;
const FIRST_WAIT_MS = 100;
/** A database that starts again is found soon: people wait for what others write. */
const LONGEST_WAIT_MS = 800;
/** A connection that has died without a word is found out by a question, ms. */
const ASK_EVERY_MS = 20_000;

/** Whoever may use the database may say something on the channel: what is no notice of ours is passed over. */
const noticeSchema = z.strictObject({
  /** Which program says it. */
  from: z.string(),
  shopId: z.string(),
  written: z.array(z.tuple([z.enum(THING_KINDS), z.string().nullable()])),
});
type Notice = z.output<typeof noticeSchema>;

/**
 * Tells what other servers of the database write too. One connection listens, and holds the lock of those who have the records open. When it was
 * lost, whatever was said meanwhile is lost: everything may have changed then, and that is told.
 *
 * @param from tells this program from others
 * @throws {RecordsFault} `busy`, `notReachable`
 */
export async function changeFeedOnServer(address: string, from: string): Promise<ChangeFeed> {
  const here = changeFeedHere();
  const closing = new AbortController();
  let mine: string | null = null;
  const hear = (payload: string) => {
    const notice = noticeOf(payload);
    if (notice === null || notice.from === from) return;
    here.tell(
      seenBy(
        mine,
        notice.written.map(([kind, id]) => ({ kind, id, shopId: notice.shopId })),
      ),
    );
  };
  const again = async () => {
    client = null;
    client = await reconnected(address, closing.signal, hear, again);
    if (client !== null) here.tell(THING_KINDS.map((kind) => ({ kind, id: null })));
  };
  let client: pg.Client | null = await listening(address, hear, again);
  const asking = setInterval(() => void client?.query("select 1").catch(() => client?.end()), ASK_EVERY_MS).unref();
  return {
    ...here,
    hear: (shopId) => {
      mine = shopId;
    },
    async announce(inside, noted) {
      if (client === null) await holdOpenWithin(inside);
      for (const { shopId, written } of parts(noted)) {
        const notice: Notice = { from, shopId, written: written.map(({ kind, id }) => [kind, id]) };
        await sql`select pg_notify(${CHANNEL}, ${JSON.stringify(notice)})`.execute(inside);
      }
    },
    async close() {
      closing.abort();
      clearInterval(asking);
      await client?.end();
    },
  };
}

async function listening(address: string, hear: (payload: string) => void, lost: () => Promise<void>): Promise<pg.Client> {
  const client = await connectAlone(address);
  let isListening = false;
  // From the beginning: where it ends between two questions, nobody would say so again.
  client.once("end", () => {
    if (isListening) void lost();
  });
  try {
    await holdOpen(client);
    client.on("notification", ({ payload }) => hear(payload ?? ""));
    await client.query(`listen ${CHANNEL}`);
    isListening = true;
  } catch (error) {
    await client.end();
    throw error;
  }
  return client;
}

/** Tries until the database is there again; null where the records are closed meanwhile. */
async function reconnected(
  address: string,
  signal: AbortSignal,
  hear: (payload: string) => void,
  lost: () => Promise<void>,
): Promise<pg.Client | null> {
  for (let wait = FIRST_WAIT_MS; !signal.aborted; wait = Math.min(2 * wait, LONGEST_WAIT_MS)) {
    try {
      const client = await listening(address, hear, lost);
      if (!signal.aborted) return client;
      await client.end();
    } catch {
      // The next try tells; writes meanwhile tell of it by themselves.
      await sleep(wait, undefined, { signal }).catch(() => {});
    }
  }
  return null;
}

function noticeOf(payload: string): Notice | null {
  try {
    return noticeSchema.parse(JSON.parse(payload));
  } catch {
    return null;
  }
}

/** Notices that are not too long, each of one shop. */
function parts(noted: readonly Noted[]): { shopId: string; written: readonly Written[] }[] {
  return [...new Set(noted.map(({ shopId }) => shopId))].flatMap((shopId) => {
    const own = noted.filter((one) => one.shopId === shopId);
    const noticed: readonly Written[] =
      own.length <= MOST_TOLD ? own : [...new Set(own.map(({ kind }) => kind))].map((kind) => ({ kind, id: null }));
    const count = Math.ceil(noticed.length / MOST_IN_NOTICE);
    return Array.from({ length: count }, (_, i) => ({ shopId, written: noticed.slice(i * MOST_IN_NOTICE, (i + 1) * MOST_IN_NOTICE) }));
  });
}
