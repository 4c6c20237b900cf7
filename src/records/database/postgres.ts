import { Kysely, PostgresDialect } from "kysely";
import pg from "pg";
import type { Tables } from "./tables.ts";

const INT8 = 20;
/** A shop has a handful of people at work at once. */
const MOST_CONNECTIONS = 8;
const CONNECT_MS = 5000;

/** Opens a PostgreSQL database by its address. Counts come back as numbers: none of ours reaches 2^53. */
export function openPostgres(address: string): Kysely<Tables> {
  const pool = new pg.Pool({
    connectionString: address,
    max: MOST_CONNECTIONS,
    connectionTimeoutMillis: CONNECT_MS,
    types: {
      getTypeParser: ((oid: number, format?: "text" | "binary") =>
        oid === INT8 ? Number : pg.types.getTypeParser(oid, format as "text")) as typeof pg.types.getTypeParser,
    },
  });
  // A connection that breaks while it is idle would otherwise end the process; the next query tells of it.
  pool.on("error", () => {});
  return new Kysely<Tables>({ dialect: new PostgresDialect({ pool }) });
}
