import type { RecordsFaultKind } from "#contract/records/fault";

export interface BackupFile {
  /** Name of the file in the folder of backups. */
  readonly name: string;
  readonly madeAt: string;
  readonly bytes: number;
  readonly why: "asked" | "scheduled" | "before migration" | "before restore";
}

export interface BackupReport {
  readonly madeAt: string;
  readonly programVersion: string;
  readonly schema: string;
  readonly files: number;
  /** Photos and profile files that were lost before the backup was made. */
  readonly missing: readonly string[];
  /** How many there are of each kind of thing. */
  readonly counts: Readonly<Record<string, number>>;
}

/** A backup that was to be made and is none: it could not be written, or what was written did not read back. */
export interface BackupFailure {
  readonly at: string;
  readonly why: BackupFile["why"];
  /** `broken` where something of ours broke. */
  readonly fault: RecordsFaultKind | "broken";
}

/** How it stands with the backups: whether the last that was to be made is there. */
export interface BackupState {
  /** When the newest was made; null where there is none. */
  readonly lastMadeAt: string | null;
  /** The last one, where it failed. */
  readonly failed: BackupFailure | null;
  /** How many photos and profile files were lost before the last good one was made. */
  readonly lostFiles: number;
}

/** A backup as one file that holds everything, on its way. */
export interface SentBackup {
  readonly stream: AsyncIterable<Uint8Array>;
  readonly name: string;
}

export interface Backups {
  /** Newest first. Each was read back when it was made. */
  list(): Promise<readonly BackupFile[]>;
  /** Quick to ask: nothing of the backups is read. */
  state(): Promise<BackupState>;
  /**
   * Makes a backup while work goes on, and reads it back.
   *
   * @param form `whole` has photos and files in it; else they lie beside it, once for all backups
   * @throws {RecordsFault} `full`, `readOnly`; `badBackup` where it did not read back; `busy` where another one is being made
   */
  make(why: "asked" | "scheduled", form?: "sharing" | "whole"): Promise<BackupFile>;
  /** Makes the scheduled backup where it is due, takes out those that retention does not keep, and what else is of no more use. Once an hour is enough. */
  keepUp(): Promise<{ readonly made: BackupFile | null; readonly takenOut: readonly string[] }>;
  /** Reads a backup through and compares every checksum. @throws {RecordsFault} `badBackup`, `notFound` */
  verify(name: string): Promise<BackupReport>;
  /** Where a backup lies; photos and files may lie beside it. @throws {RecordsFault} `notFound` */
  path(name: string): Promise<string>;
  /** A backup as one file with everything in it, to be kept elsewhere. @throws {RecordsFault} `notFound`, `badBackup`; also while it is read */
  send(name: string): Promise<SentBackup>;
}
