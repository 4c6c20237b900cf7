import { sql } from "kysely";
import { RecordsFault } from "#contract/records/fault";
import type { Step } from "./migrations/step.ts";
import type { Db } from "./tables.ts";
import { type Runner, transaction } from "./transaction.ts";

/** Any number that no other program takes for its own lock. */
const LOCK = 7_460_391;

export interface SchemaState {
  /** Name of the last step; empty for a database without any. */
  readonly at: string;
  readonly pending: readonly Step[];
}

/**
 * Where a database's schema stands.
 *
 * @throws {RecordsFault} `newerSchema` where it has steps that this program does not know
 */
export async function schemaState({ db, engine }: Runner, steps: readonly Step[]): Promise<SchemaState> {
  await db.schema
    .createTable("schemaSteps")
    .ifNotExists()
    .addColumn("name", engine === "postgres" ? sql`text collate "C"` : sql`text`, (c) => c.primaryKey())
    .addColumn("at", "text", (c) => c.notNull())
    .execute();
  return stateIn(db, steps);
}

async function stateIn(db: Db, steps: readonly Step[]): Promise<SchemaState> {
  const applied = (await db.selectFrom("schemaSteps").select("name").orderBy("name").execute()).map(({ name }) => name);
  const unknown = applied.find((name) => !steps.some((step) => step.name === name));
  if (unknown !== undefined) throw new RecordsFault("newerSchema", unknown);
  return { at: applied.at(-1) ?? "", pending: steps.filter(({ name }) => !applied.includes(name)) };
}

/** Brings the schema up to date, each step in a transaction of its own: one that is interrupted leaves nothing behind. */
export async function migrate(runner: Runner, steps: readonly Step[], now: () => number): Promise<void> {
  for (const step of (await schemaState(runner, steps)).pending) {
    await transaction(runner, async (db) => {
      if (runner.engine === "postgres") await sql`select pg_advisory_xact_lock(${LOCK})`.execute(db);
      // Another process may have been quicker.
      const { pending } = await stateIn(db, steps);
      if (!pending.some(({ name }) => name === step.name)) return;
      await step.apply(db, runner.engine);
      await db
        .insertInto("schemaSteps")
        .values({ name: step.name, at: new Date(now()).toISOString() })
        .execute();
    });
  }
}
