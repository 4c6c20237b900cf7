import { setTimeout as sleep } from "node:timers/promises";
import { withFaults } from "./driverFault.ts";
import type { Db, EngineName } from "./tables.ts";

/** With the waits between them about eight seconds. */
const MOST_TRIES = 40;
const LONGEST_WAIT_MS = 400;
/** PostgreSQL: the transaction could not be fitted in with others that ran meanwhile, and may simply be run again. */
const TRY_AGAIN = new Set(["40001", "40P01"]);

/** A database that transactions are run on. */
export interface Runner {
  readonly db: Db;
  readonly engine: EngineName;
  /** A number from 0 to 1, for waiting times. */
  readonly chance: () => number;
}

/**
 * Runs `work` as if it were alone in the database: with the write lock from the beginning on SQLite, serializable on PostgreSQL.
 * `work` may be run more than once and must do nothing that is not undone with the transaction.
 *
 * @throws {RecordsFault} `busy` where it never got its turn, `full`, `readOnly`, `damaged`, `notReachable`; and whatever `work` throws
 */
export function transaction<Answer>(runner: Runner, work: (db: Db) => Promise<Answer>): Promise<Answer> {
  return withFaults("the database", () => (runner.engine === "sqlite" ? runner.db.transaction().execute(work) : withRetry(runner, work)));
}

/** Reads as of one moment, whatever is written meanwhile. */
export function momentOf<Answer>({ db, engine }: Runner, work: (db: Db) => Promise<Answer>): Promise<Answer> {
  const reading = db.transaction();
  return withFaults("the database", () =>
    (engine === "sqlite" ? reading : reading.setIsolationLevel("repeatable read").setAccessMode("read only")).execute(work),
  );
}

async function withRetry<Answer>({ db, chance }: Runner, work: (db: Db) => Promise<Answer>): Promise<Answer> {
  for (let tries = 1; ; tries += 1) {
    try {
      return await db.transaction().setIsolationLevel("serializable").execute(work);
    } catch (error) {
      const code = error instanceof Error && "code" in error ? String(error.code) : "";
      if (tries === MOST_TRIES || !TRY_AGAIN.has(code)) throw error;
      // Waits grow and scatter, so that two that collided do not collide again.
      await sleep(chance() * Math.min(2 ** tries, LONGEST_WAIT_MS));
    }
  }
}
