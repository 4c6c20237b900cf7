import type { BackupFile } from "./backups.ts";

const NAME = /^gritwright-(\d{4}-\d{2}-\d{2}T\d{2})-(\d{2})-(\d{2}\.\d{3}Z)-(asked|scheduled|before-migration|before-restore)\.zip$/;

/** Colons are not allowed in names everywhere. */
export function backupName({ madeAt, why }: Pick<BackupFile, "madeAt" | "why">): string {
  return `gritwright-${madeAt.replaceAll(":", "-")}-${why.replace(" ", "-")}.zip`;
}

/** What the name of a backup says; null for any other file. */
export function backupNameParts(name: string): Pick<BackupFile, "madeAt" | "why"> | null {
  const [, hours, minutes, seconds, why] = NAME.exec(name) ?? [];
  return why === undefined ? null : { madeAt: `${hours}:${minutes}:${seconds}`, why: why.replace("-", " ") as BackupFile["why"] };
}

/** Whether it may be a backup that somebody called something else. */
export function isZip(name: string): boolean {
  return name.toLowerCase().endsWith(".zip");
}
