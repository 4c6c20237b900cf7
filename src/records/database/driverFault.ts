import { RecordsFault, type RecordsFaultKind } from "#contract/records/fault";

/** SQLite's result codes by their beginning; see "Result and Error Codes" of its documentation. */
const SQLITE: readonly [string, RecordsFaultKind][] = [
  ["SQLITE_BUSY", "busy"],
  ["SQLITE_LOCKED", "busy"],
  ["SQLITE_READONLY", "readOnly"],
  ["SQLITE_PERM", "readOnly"],
  ["SQLITE_FULL", "full"],
  // What a write past a quota or a limit on the size of files ends as.
  ["SQLITE_IOERR_WRITE", "full"],
  ["SQLITE_CORRUPT", "damaged"],
  ["SQLITE_NOTADB", "damaged"],
  ["SQLITE_CANTOPEN", "notReachable"],
  ["SQLITE_IOERR", "damaged"],
];

/** PostgreSQL's SQLSTATE by their beginning; appendix A of its documentation. And Node's codes for a server that is not there. */
const POSTGRES: readonly [string, RecordsFaultKind][] = [
  ["40001", "busy"],
  ["40P01", "busy"],
  ["55P03", "busy"],
  ["53100", "full"],
  ["53", "busy"],
  ["25006", "readOnly"],
  ["42501", "readOnly"],
  ["08", "notReachable"],
  ["57P0", "notReachable"],
  ["28", "notReachable"],
  ["3D000", "notReachable"],
  ["XX00", "damaged"],
];

const FILES: readonly [string, RecordsFaultKind][] = [
  ["ECONN", "notReachable"],
  ["ENOTFOUND", "notReachable"],
  ["EROFS", "readOnly"],
  ["EACCES", "readOnly"],
  ["EPERM", "readOnly"],
  ["ENOSPC", "full"],
  ["EDQUOT", "full"],
  ["EFBIG", "full"],
  ["ENOENT", "notFound"],
  ["ENOTDIR", "notReachable"],
];

/** What the PostgreSQL driver says without any code, by the beginning: that all connections stayed in use, or that one was lost. */
const UNCODED: readonly [string, RecordsFaultKind][] = [
  ["timeout exceeded when trying to connect", "busy"],
  ["Connection terminated", "notReachable"],
  ["timeout expired", "notReachable"],
  ["Client has encountered a connection error", "notReachable"],
];

/** What a driver or the file system threw, as a fault of the records where it is one we know; else as it was. */
export function asRecordsFault(error: unknown, about: string): unknown {
  if (error instanceof RecordsFault) return error;
  const code = error instanceof Error && "code" in error ? String(error.code) : "";
  const said = code === "" && error instanceof Error ? error.message : code;
  const kind = (code === "" ? UNCODED : [...SQLITE, ...POSTGRES, ...FILES]).find(([start]) => said.startsWith(start))?.[1];
  return kind === undefined ? error : new RecordsFault(kind, about, { cause: error });
}

/** Runs something and throws what it throws as a fault of the records. */
export async function withFaults<Answer>(about: string, work: () => Promise<Answer>): Promise<Answer> {
  try {
    return await work();
  } catch (error) {
    throw asRecordsFault(error, about);
  }
}
