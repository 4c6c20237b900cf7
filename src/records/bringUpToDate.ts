import { RecordsFault } from "#contract/records/fault";
import type { AllBackups } from "./backup/makeBackup.ts";
import { migrate, schemaState } from "./database/migrate.ts";
import type { Step } from "./database/migrations/step.ts";
import type { Runner } from "./database/transaction.ts";
import { newerWriter, sayLeastWriter } from "./database/writers.ts";

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
