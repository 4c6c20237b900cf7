import { setTimeout as sleep } from "node:timers/promises";
import { sql } from "kysely";
import { withFaults } from "./driverFault.ts";
import type { Db, EngineName } from "./tables.ts";

/** With the waits between them about eight seconds. */
const MOST_TRIES = 40;
const LONGEST_WAIT_MS = 400;
/** PostgreSQL: the transaction could not be fitted in with others that ran meanwhile, and may simply be run again. */
const TRY_AGAIN = new Set(["40001", "40P01"]);

/** First half of the lock that writes of one shop take in turn; any number that no other program takes. */
const TURN = 7_460_392;
/** How long a write waits for the one before it, ms. */
const TURN_WAIT_MS = 8000;
/** How long a program may do nothing in its turn, ms. */
const STANDSTILL_MS = 30_000;

/** A database that transactions are run on. */
export interface Runner {
  readonly db: Db;
  /** PostgreSQL: connections of their own for writes that come in turn; those of `db` where it is left out. */
  readonly turns?: Db;
  readonly engine: EngineName;
  /** SQLite: throws where the file is not under its name any more. */
  readonly mustBeThere?: () => void;
  /** A number from 0 to 1, for waiting times. */
  readonly chance: () => number;
}

/**
 * Runs `work` as if it were alone in the database: with the write lock from the beginning on SQLite, serializable on PostgreSQL.
 * `work` may be run more than once and must do nothing that is not undone with the transaction.
 *
 * @param shopId whose write it is: on PostgreSQL the writes of a shop then come one after the other, from whichever server. Many who write
 *   down the same thing at once would otherwise undo one another again and again; those of other shops only meet in what all share.
 * @throws {RecordsFault} `busy` where it never got its turn, `full`, `readOnly`, `damaged`, `notReachable`; `folderGone` where the file of the database
 *   was taken away or changed for another; and whatever `work` throws
 */
export function transaction<Answer>(runner: Runner, work: (db: Db) => Promise<Answer>, shopId: string | null = null): Promise<Answer> {
  return withFaults("the database", () => (runner.engine === "sqlite" ? inFile(runner, work) : withRetry(runner, work, shopId)));
}

/** What was written into a file that nobody finds again is not acknowledged; nor is anything written into one that is gone already. */
async function inFile<Answer>({ db, mustBeThere = () => {} }: Runner, work: (db: Db) => Promise<Answer>): Promise<Answer> {
  mustBeThere();
  const answer = await db.transaction().execute(work);
  mustBeThere();
  return answer;
}

/** Reads as of one moment, whatever is written meanwhile. */
export function momentOf<Answer>({ db, engine }: Runner, work: (db: Db) => Promise<Answer>): Promise<Answer> {
  const reading = db.transaction().setAccessMode("read only");
  return withFaults("the database", () => (engine === "sqlite" ? reading : reading.setIsolationLevel("repeatable read")).execute(work));
}

async function withRetry<Answer>(
  { db, turns = db, chance }: Runner,
  work: (db: Db) => Promise<Answer>,
  shopId: string | null,
): Promise<Answer> {
  for (let tries = 1; ; tries += 1) {
    try {
      return await (shopId === null ? serializable(db, work) : inTurn(turns, shopId, work));
    } catch (error) {
      const code = error instanceof Error && "code" in error ? String(error.code) : "";
      if (tries === MOST_TRIES || !TRY_AGAIN.has(code)) throw error;
      // Waits grow and scatter, so that two that collided do not collide again.
      await sleep(chance() * Math.min(2 ** tries, LONGEST_WAIT_MS));
    }
  }
}

function serializable<Answer>(db: Db, work: (db: Db) => Promise<Answer>): Promise<Answer> {
  return db.transaction().setIsolationLevel("serializable").execute(work);
}

/**
 * The lock belongs to the connection: taken inside the transaction, it would be waited for with an old sight of what the others wrote.
 * A program that stands still in the middle of its turn loses it, and its transaction, after a while.
 */
function inTurn<Answer>(db: Db, shopId: string, work: (db: Db) => Promise<Answer>): Promise<Answer> {
  return db.connection().execute(async (connection) => {
    await sql`select set_config('lock_timeout', ${String(TURN_WAIT_MS)}, false),
      set_config('idle_in_transaction_session_timeout', ${String(STANDSTILL_MS)}, false),
      pg_advisory_lock(${TURN}, hashtext(${shopId}))`.execute(connection);
    try {
      return await serializable(connection, work);
    } finally {
      // Of a connection that broke the lock is gone already, and what broke it is told.
      await sql`select set_config('idle_in_transaction_session_timeout', '0', false), pg_advisory_unlock(${TURN}, hashtext(${shopId}))`
        .execute(connection)
        .catch(() => undefined);
    }
  });
}
