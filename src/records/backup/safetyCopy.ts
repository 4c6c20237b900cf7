const NAME = /^before-restore-(\d{4}-\d{2}-\d{2}T\d{2})-(\d{2})-(\d{2}\.\d{3}Z)$/;

/** Name of the folder that keeps what lay there before a restore. Colons are not allowed everywhere. */
export function safetyCopyName(at: number): string {
  return `before-restore-${new Date(at).toISOString().replaceAll(":", "-")}`;
}

/** When the restore was, milliseconds since 1970; null for another folder. */
export function restoredAt(name: string): number | null {
  const [, hours, minutes, seconds] = NAME.exec(name) ?? [];
  return seconds === undefined ? null : Date.parse(`${hours}:${minutes}:${seconds}`);
}
