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

export interface Backups {
  /** Newest first. */
  list(): Promise<readonly BackupFile[]>;
  /** Makes a backup while work goes on. @throws {RecordsFault} `full`, `readOnly` */
  make(why: "asked" | "scheduled"): Promise<BackupFile>;
  /** Makes the scheduled backup where it is due, takes out those that retention does not keep, and what else is of no more use. Once an hour is enough. */
  keepUp(): Promise<{ readonly made: BackupFile | null; readonly takenOut: readonly string[] }>;
  /** Reads a backup through and compares every checksum. @throws {RecordsFault} `badBackup`, `notFound` */
  verify(name: string): Promise<BackupReport>;
  /** The bytes of a backup, to be kept elsewhere. @throws {RecordsFault} `notFound` */
  path(name: string): Promise<string>;
}
