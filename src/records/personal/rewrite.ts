import { setTimeout as sleep } from "node:timers/promises";
import { sql } from "kysely";
import { RecordsFault } from "#contract/records/fault";
import { TABLE_RULES } from "../database/tableRules.ts";
import type { Db } from "../database/tables.ts";
import type { Session } from "../session.ts";

/** How long those are waited for who still see what there was before, as a backup that is being made, ms. */
const WAIT_MS = 60_000;
const LOOK_EVERY_MS = 100;

/** Tables in which a bowler may stand, in words or pictures. What is bound to nobody is not rewritten. */
const PERSONAL = Object.entries(TABLE_RULES).flatMap(([table, { bowlerStands }]) => (bowlerStands === "no" ? [] : [table]));

/**
 * Writes the tables anew without what was deleted or overwritten in them: a database only marks it as gone.
 *
 * @throws {RecordsFault} `busy` where somebody looked at what was there before all the time; to erase once more then writes them anew
 */
export async function leaveNothingBehind(session: Session): Promise<void> {
  const { db } = session.acrossShops();
  return session.engine === "postgres" ? rewriteOnServer(db) : rewriteFile(db);
}

/** Deleted rows are overwritten (`secure_delete`); the log of writes and the file's free pages must not keep them either. */
async function rewriteFile(db: Db): Promise<void> {
  await patiently(async () => {
    await sql`vacuum`.execute(db);
    const { rows } = await sql<{ busy: number }>`pragma wal_checkpoint(truncate)`.execute(db);
    return rows[0].busy === 0;
  });
}

/**
 * `vacuum` alone leaves the bytes where they are until something else comes to lie there; `full` writes tables, indexes and long values (TOAST) into
 * files of their own and drops the old. It takes along what anybody may still see. Values that planning goes by lie in a table of the server's.
 */
async function rewriteOnServer(db: Db): Promise<void> {
  await nobodySeesOld(db);
  for (const table of PERSONAL) await sql`vacuum (full, analyze) ${sql.table(table)}`.execute(db);
  // Left out by the server, with a warning, where the user does not own the database.
  await nobodySeesOld(db);
  await sql`vacuum full pg_catalog.pg_statistic`.execute(db);
}

/** Waits until nobody is in a transaction that began before now. */
async function nobodySeesOld(db: Db): Promise<void> {
  const { rows } = await sql<{ id: string }>`select pg_current_xact_id()::text as id`.execute(db);
  await patiently(async () => {
    const looking = await sql`select 1 from pg_stat_activity where datname = current_database() and pid <> pg_backend_pid()
      and age(backend_xmin) >= age(${rows[0].id}::xid)`.execute(db);
    return looking.rows.length === 0;
  });
}

async function patiently(isDone: () => Promise<boolean>): Promise<void> {
  for (const until = performance.now() + WAIT_MS; !(await isDone()); await sleep(LOOK_EVERY_MS))
    if (performance.now() > until) throw new RecordsFault("busy", "the database");
}
