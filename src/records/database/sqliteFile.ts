import { createRequire } from "node:module";
import type Sqlite from "better-sqlite3";
import { type NodeSqlite, openWithNode } from "./nodeSqlite.ts";
import type { SqliteFile, SqliteOptions } from "./sqliteShape.ts";

type Open = (path: string, options: SqliteOptions) => SqliteFile;

let open: Open | null = null;

/** @throws SQLite's error with its code (`SQLITE_BUSY`), from either driver; {@link NoSqlite} where there is none */
export function openFile(path: string, options: SqliteOptions = {}): SqliteFile {
  open ??= driver();
  return open(path, options);
}

/** This machine has no SQLite for us; the message says what to install. */
export class NoSqlite extends Error {
  override readonly name = "NoSqlite";
}

/**
 * better-sqlite3 is native code: where no built one could be had for this Node and there was no compiler, it is not there, or does not load. Node brings a
 * SQLite of its own with the lines that are younger.
 */
function driver(): Open {
  let why: string;
  try {
    const Native = createRequire(import.meta.url)("better-sqlite3") as typeof Sqlite;
    new Native(":memory:").close();
    return (path, options) => new Native(path, options) as unknown as SqliteFile;
  } catch (error) {
    why = error instanceof Error ? error.message.split("\n")[0] : String(error);
  }
  const own = process.getBuiltinModule?.("node:sqlite") as NodeSqlite | undefined;
  // Before 22.16 it neither tells what gives rows, nor copies itself, nor waits for a lock.
  if (own !== undefined && "columns" in own.StatementSync.prototype) return (path, options) => openWithNode(own, path, options);
  throw new NoSqlite(
    `this machine has no SQLite for it. Node ${process.versions.node} brings none, and the package better-sqlite3 does not load (${why}). ` +
      "Install Node 24, which brings one; or a compiler (on Debian: python3 make g++; on Windows: Visual Studio's build tools), and this program once more.",
  );
}
