import type { Write } from "../write.ts";

/** Everything that is kept of one bowler in all shops of the database, as plain JSON, and the photos. */
export interface PersonalData {
  readonly document: Readonly<Record<string, unknown>>;
  readonly photos: readonly { readonly name: string; readonly bytes: Uint8Array }[];
}

export interface Personal {
  /** @throws {RecordsFault} `notFound` */
  exportOf(bowlerId: string, write: Write): Promise<PersonalData>;
  /**
   * Erases a bowler's personal data everywhere but in backups made before; those are cleared when they are restored.
   * Work, money and balls stay, without the person.
   *
   * @throws {RecordsFault} `notFound`
   */
  erase(bowlerId: string, write: Write): Promise<void>;
}
