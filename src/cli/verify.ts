import type { BackupReport } from "#records/backup/backups";
import { verifyBackup } from "#records/backup/verifyBackup";
import { RECORDS } from "#words/en/records";
import { wordsFor } from "./openShop.ts";
import type { Options } from "./options.ts";
import type { ExitCode, World } from "./world.ts";

/** `gritwright verify FILE`: reads a backup through and compares every checksum. */
export async function verify(words: readonly string[], options: Options, world: World): Promise<ExitCode> {
  const [path] = wordsFor(words, "verify", ["FILE"]);
  const report = await verifyBackup(path);
  if (options.json) world.print(`${JSON.stringify({ gritwright: 1, kind: "backupReport", ...report }, null, 2)}\n`);
  else world.print(`${[RECORDS.sound(path, report.madeAt), ...contents(report)].join("\n")}\n`);
  return 0;
}

function contents({ counts, missing }: BackupReport): string[] {
  const kinds = Object.entries(counts).filter(([, count]) => count > 0);
  return [...kinds.map(([kind, count]) => RECORDS.counted(count, kind)), ...missing.map(RECORDS.missing)];
}
