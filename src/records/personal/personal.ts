import type { Write } from "../write.ts";

/** Everything that is kept of one bowler in all shops of the database, as plain JSON, and the photos. */
export interface PersonalData {
  readonly document: Readonly<Record<string, unknown>>;
  readonly photos: readonly { readonly name: string; readonly bytes: Uint8Array }[];
}

/** A copy of the records from before an erasure, which still holds the person. */
export interface OlderCopy {
  /** Name of a backup, or of what lay there before a restore. */
  readonly name: string;
  readonly kind: "backup" | "before restore";
  readonly madeAt: string;
  /** By when it will have gone; null where it stays until somebody deletes it. */
  readonly goneBy: string | null;
}

export interface Erased {
  readonly at: string;
  /** Of this server; others of the same database have backups of their own. Newest first. */
  readonly stillIn: readonly OlderCopy[];
}

export interface Personal {
  /** @throws {RecordsFault} `notFound` */
  exportOf(bowlerId: string, write: Write): Promise<PersonalData>;
  /**
   * Erases a bowler's personal data everywhere but in backups made before; those are cleared when they are restored.
   * Work, money and balls stay, without the person.
   *
   * @throws {RecordsFault} `notFound`; `busy` where somebody looked at the old rows for a minute: erased once more, they are overwritten
   */
  erase(bowlerId: string, write: Write): Promise<Erased>;
}
