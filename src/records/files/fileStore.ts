import type { Db } from "../database/tables.ts";

/**
 * Where the bytes of photos and profile files lie, by names like `photos/<checksum>.png`: in the shop's folder, or in the database where several
 * servers share one. The same bytes lie there once for all shops.
 */
export interface FileStore {
  /** Keeps bytes under their name, within the write of the row that speaks of them: both last, or neither is spoken of. */
  put(inside: Db, name: string, bytes: Uint8Array): Promise<void>;
  /** Null where there is no such file. @throws {RecordsFault} `notReachable`, `readOnly` */
  get(db: Db, name: string): Promise<Uint8Array | null>;
  /** Takes files out, within the write of the rows that spoke of them. Returns what is left to do once that has been kept. */
  remove(inside: Db, names: readonly string[]): Promise<() => Promise<void>>;
  /** Names of all files that were last put there before a time, ms since 1970. */
  olderThan(db: Db, time: number): Promise<string[]>;
}
