import { statSync } from "node:fs";
import { RecordsFault } from "#contract/records/fault";

/** Which file lies under a name: another one of the same name has another. Null where there is none. */
export function identityOf(path: string): string | null {
  const found = statSync(path, { bigint: true, throwIfNoEntry: false });
  if (found === undefined) return null;
  // Some file systems of Windows number their files by nought; when it was made is told apart there.
  return found.ino === 0n ? `made ${found.birthtimeNs}` : `${found.dev} ${found.ino}`;
}

/**
 * Watches that a database which is open still lies under its name: a file that is deleted or moved while it is open goes on taking writes, and nobody
 * finds them again. Its log of writes is watched with it.
 *
 * @param database path of a SQLite file that is open
 * @returns throws `folderGone` where it does not; a few microseconds
 */
export function mustBeThere(database: string): () => void {
  const own = identityOf(database);
  const log = `${database}-wal`;
  let ownLog = identityOf(log);
  return () => {
    // The log is made with the first that is read or written, and stays until the last who has it open closes.
    ownLog ??= identityOf(log);
    if (identityOf(database) !== own || identityOf(log) !== ownLog) throw new RecordsFault("folderGone", database);
  };
}
