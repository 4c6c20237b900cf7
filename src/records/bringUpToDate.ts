import { RecordsFault } from "#contract/records/fault";
import type { AllBackups } from "./backup/makeBackup.ts";
import { migrate, schemaState } from "./database/migrate.ts";
import type { Step } from "./database/migrations/step.ts";
import type { Db } from "./database/tables.ts";
import { type Runner, transaction } from "./database/transaction.ts";

interface Program {
  readonly now: () => number;
  readonly programVersion: string;
}

/**
 * Brings an older schema up to date, after a backup; a new database needs none. Where a newer program has been here nothing is changed.
 *
 * @returns the newer program that asks this one only to read; null where this one may write
 * @throws {RecordsFault} `newerSchema` where steps of both kinds are missing, as of two lines of programs; `full` where there is no room for the
 *   backup, and nothing is changed then
 */
export async function bringUpToDate(
  runner: Runner,
  backup: AllBackups,
  steps: readonly Step[],
  { now, programVersion }: Program,
): Promise<string | null> {
  const { at, pending, newer } = await schemaState(runner, steps);
  if (pending.length > 0) {
    if (newer.length > 0) throw new RecordsFault("newerSchema", newer[0]);
    if (at !== "") await backup.makeFor("before migration");
    await migrate(runner, steps, now);
  }
  const newerProgram = await newerWriter(runner.db);
  if (newerProgram === null) await sayLeastWriter(runner, programVersion);
  return newerProgram;
}

const LEAST = "least writer";

/** Which program asks older ones only to read, where there is one that this program is older than; null where this program may write. */
export async function newerWriter(db: Db): Promise<string | null> {
  const row = await db.selectFrom("writers").selectAll().where("name", "=", LEAST).executeTakeFirst();
  return row === undefined || row.format <= FORMAT ? null : row.program;
}

/** Says what the least is that a program must know to write here. It never goes down. */
export async function sayLeastWriter(runner: Runner, program: string): Promise<void> {
  const before = await runner.db.selectFrom("writers").select("format").where("name", "=", LEAST).executeTakeFirst();
  if (before !== undefined && before.format >= LEAST_WRITER) return;
  await transaction(runner, async (db) => {
    await db.deleteFrom("writers").where("name", "=", LEAST).where("format", "<", LEAST_WRITER).execute();
    await db
      .insertInto("writers")
      .values({ name: LEAST, format: LEAST_WRITER, program })
      .onConflict((conflict) => conflict.doNothing())
      .execute();
  });
}

/** Counts up with each program that keeps things in a way that the ones before would spoil by writing. 2: taxes in thousandths of a percent, which 1 took for none. */
export const FORMAT = 2;
/** The oldest format whose programs may still write what this program keeps. */
export const LEAST_WRITER = 2;
