import { existsSync, mkdirSync, renameSync } from "node:fs";
import { join } from "node:path";

/** Where things lie in a shop's folder. */
export interface ShopFolder {
  readonly root: string;
  /** Database and files of today; a restore changes this folder for another as a whole. */
  readonly live: string;
  readonly database: string;
  readonly backups: string;
  /** Which bowlers' data were erased and when; outside what a restore brings back. */
  readonly erasures: string;
  /** A restored folder that has been checked and only waits to be put in place. */
  readonly checked: string;
}

export function shopFolder(root: string): ShopFolder {
  const live = join(root, "live");
  return {
    root,
    live,
    database: join(live, "records.sqlite"),
    backups: join(root, "backups"),
    erasures: join(root, "erasures.jsonl"),
    checked: join(root, "restored-and-checked"),
  };
}

/** Personal data are nobody else's to read on this machine. */
const OWNER_ONLY = 0o700;

/** Makes the folder alone: where the database is a server's, nothing live lies in it. */
export function prepareRoot({ root }: ShopFolder): void {
  mkdirSync(root, { recursive: true, mode: OWNER_ONLY });
}

/** Makes the folder of the backups: they hold what the records hold. */
export function prepareBackups({ backups }: ShopFolder): void {
  mkdirSync(backups, { recursive: true, mode: OWNER_ONLY });
}

/** Makes what is missing, and ends a restore that the power cut short between its two renames. */
export function prepareFolder({ live, checked }: ShopFolder): void {
  if (!existsSync(live) && existsSync(checked)) renameSync(checked, live);
  mkdirSync(live, { recursive: true, mode: OWNER_ONLY });
}
