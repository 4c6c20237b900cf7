import type { AllBackups } from "./backup/makeBackup.ts";
import { migrate, schemaState } from "./database/migrate.ts";
import type { Step } from "./database/migrations/step.ts";
import type { Runner } from "./database/transaction.ts";

/**
 * Brings an older schema up to date, after a backup. A new database needs none.
 *
 * @throws {RecordsFault} `newerSchema`; `full` where there is no room for the backup, and nothing is changed then
 */
export async function bringUpToDate(runner: Runner, backup: AllBackups, steps: readonly Step[], now: () => number): Promise<void> {
  const { at, pending } = await schemaState(runner, steps);
  if (pending.length === 0) return;
  if (at !== "") await backup.makeFor("before migration");
  await migrate(runner, steps, now);
}
