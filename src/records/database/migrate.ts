import { sql } from "kysely";
import { RecordsFault } from "#contract/records/fault";
import type { Step } from "./migrations/step.ts";
import type { Db, EngineName } from "./tables.ts";
import { type Runner, transaction } from "./transaction.ts";

/** Any number that no other program takes for its own lock. */
const LOCK = 7_460_391;

export interface SchemaState {
  /** Name of the last step; empty for a database without any. */
  readonly at: string;
  readonly pending: readonly Step[];
  /** Steps of newer programs, which this one does not know. A step only adds, so that it can go on beside them. */
  readonly newer: readonly string[];
}

/** Where a database's schema stands. Only reads. */
export async function schemaState({ db, engine }: Runner, steps: readonly Step[]): Promise<SchemaState> {
  const applied = (await hasSteps(db, engine)) ? await db.selectFrom("schemaSteps").select("name").orderBy("name").execute() : [];
  const names = applied.map(({ name }) => name);
  return {
    at: names.at(-1) ?? "",
    pending: steps.filter(({ name }) => !names.includes(name)),
    newer: names.filter((name) => !steps.some((step) => step.name === name)),
  };
}

/** The same for whoever has to know every table and column. @throws {RecordsFault} `newerSchema` */
export async function knownSchema(runner: Runner, steps: readonly Step[]): Promise<SchemaState> {
  const state = await schemaState(runner, steps);
  if (state.newer.length > 0) throw new RecordsFault("newerSchema", state.newer[0]);
  return state;
}

async function hasSteps(db: Db, engine: EngineName): Promise<boolean> {
  const asked =
    engine === "postgres"
      ? sql<{ found: unknown }>`select to_regclass('"schemaSteps"') as found`
      : sql<{ found: unknown }>`select (select name from sqlite_master where name = 'schemaSteps') as found`;
  return (await asked.execute(db)).rows[0].found !== null;
}

/** Brings the schema up to date, each step in a transaction of its own: one that is interrupted leaves nothing behind. */
export function migrate(runner: Runner, steps: readonly Step[], now: () => number): Promise<void> {
  if (runner.engine === "sqlite") return applySteps(runner, steps, now);
  // The lock belongs to the connection: taken inside a transaction, it would be waited for with an old sight of what has been applied.
  return runner.db.connection().execute(async (db) => {
    await sql`select pg_advisory_lock(${LOCK})`.execute(db);
    try {
      await makeSchema(db);
      await applySteps({ ...runner, db }, steps, now);
    } finally {
      await sql`select pg_advisory_unlock(${LOCK})`.execute(db);
    }
  });
}

/** The schema that the connection looks into. */
async function makeSchema(db: Db): Promise<void> {
  const { rows } = await sql<{ search_path: string }>`show search_path`.execute(db);
  await sql`create schema if not exists ${sql.id(rows[0].search_path)}`.execute(db);
}

async function applySteps(runner: Runner, steps: readonly Step[], now: () => number): Promise<void> {
  const { engine } = runner;
  for (const { name } of (await knownSchema(runner, steps)).pending) {
    await transaction(runner, async (db) => {
      await makeSteps(db, engine);
      // On SQLite another process may have been quicker until the transaction began.
      const step = (await schemaState({ ...runner, db }, steps)).pending.find((one) => one.name === name);
      if (step === undefined) return;
      await step.apply(db, engine);
      await db
        .insertInto("schemaSteps")
        .values({ name, at: new Date(now()).toISOString() })
        .execute();
    });
  }
}

async function makeSteps(db: Db, engine: EngineName): Promise<void> {
  await db.schema
    .createTable("schemaSteps")
    .ifNotExists()
    .addColumn("name", engine === "postgres" ? sql`text collate "C"` : sql`text`, (c) => c.primaryKey())
    .addColumn("at", "text", (c) => c.notNull())
    .execute();
}
