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

/** What the PostgreSQL driver says of a server that speaks no TLS. */
const NO_TLS = "The server does not support SSL connections";
/** Node's codes for a certificate that is not trusted, by their beginning. */
const TLS_CODES = ["DEPTH_ZERO_SELF_SIGNED", "SELF_SIGNED_CERT", "UNABLE_TO_", "ERR_TLS_", "CERT_"];

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
  ...TLS_CODES.map((code): [string, RecordsFaultKind] => [code, "notReachable"]),
];

const FILES: readonly [string, RecordsFaultKind][] = [
  ["ECONN", "notReachable"],
  ["EPIPE", "notReachable"],
  ["ETIMEDOUT", "notReachable"],
  ["EHOST", "notReachable"],
  ["ENET", "notReachable"],
  ["EAI_", "notReachable"],
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
  [NO_TLS, "notReachable"],
];

/** What a server and its address want, where the same kind of fault has several reasons; by the beginning of what the driver says. */
const WANTED: readonly [string, string][] = [
  ["28", "a user and a password that the server takes"],
  ["3D000", "a database that is there: create database NAME encoding 'UTF8' template template0 makes one"],
  ["42501", "a user who may create a schema in the database: grant create on database NAME to USER"],
  [NO_TLS, "an address without sslmode on this machine, or a server that speaks TLS"],
  ...TLS_CODES.map((code): [string, string] => [code, "a server whose certificate this machine trusts for that name"]),
];

/** What a driver or the file system threw, as a fault of the records where it is one we know; else as it was. */
export function asRecordsFault(error: unknown, about: string): unknown {
  if (error instanceof RecordsFault) return error;
  const code = error instanceof Error && "code" in error ? String(error.code) : "";
  const said = code === "" && error instanceof Error ? error.message : code;
  const meant = <What>(table: readonly [string, What][]) => table.find(([start]) => said.startsWith(start))?.[1];
  const kind = meant(code === "" ? UNCODED : [...SQLITE, ...POSTGRES, ...FILES]);
  if (kind === undefined) return error;
  const allowed = meant(WANTED);
  return new RecordsFault(kind, about, {
    cause: error,
    problems: allowed === undefined ? [] : [{ path: "database", value: null, allowed }],
  });
}

/** Runs something and throws what it throws as a fault of the records. */
export async function withFaults<Answer>(about: string, work: () => Promise<Answer>): Promise<Answer> {
  try {
    return await work();
  } catch (error) {
    throw asRecordsFault(error, about);
  }
}
