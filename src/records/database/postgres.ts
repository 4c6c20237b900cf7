import { Kysely, PostgresDialect, sql } from "kysely";
import pg from "pg";
import { RecordsFault } from "#contract/records/fault";
import { addressIn, SCHEMA } from "./address.ts";
import type { Db, Tables } from "./tables.ts";

const INT8 = 20;
/** A shop has a handful of people at work at once. */
const MOST_CONNECTIONS = 8;
/** One write is at work and the next already asks for its turn; the others wait in this program, where waiting costs the database nothing. */
const MOST_WRITING = 2;
const CONNECT_MS = 5000;
/** Where the way is cut and nobody says so, an answer would be waited for as long as the system repeats the question, ms. */
const ANSWER_MS = 5000;
/** Any number that no other program takes for its own lock: shared by all who have the records open, taken alone by a restore and a move. */
const OPEN_LOCK = 7_460_392;

/** How every connection of ours is made. */
function settings(address: string, schema: string): pg.ClientConfig {
  return {
    connectionString: addressIn(address, schema),
    connectionTimeoutMillis: CONNECT_MS,
    application_name: "gritwright",
    keepAlive: true,
    types: {
      getTypeParser: ((oid: number, format?: "text" | "binary") =>
        oid === INT8 ? Number : pg.types.getTypeParser(oid, format as "text")) as typeof pg.types.getTypeParser,
    },
  };
}

/** Opens a PostgreSQL database by its address. Counts come back as numbers: none of ours reaches 2^53. */
export function openPostgres(address: string, schema = SCHEMA): Kysely<Tables> {
  return openPool(address, schema, MOST_CONNECTIONS);
}

/** Opens it once more for writes that come in turn: those that wait then hold no connection that a reader wants. */
export function openForTurns(address: string): Kysely<Tables> {
  return openPool(address, SCHEMA, MOST_WRITING);
}

function openPool(address: string, schema: string, max: number): Kysely<Tables> {
  const pool = new pg.Pool({ ...settings(address, schema), max });
  // A connection that breaks while it is idle would otherwise end the process; the next query tells of it.
  pool.on("error", () => {});
  // So would one that breaks in use, or between two queries of a transaction: the query under way tells of it, or the next one.
  pool.on("connect", (client) => void client.on("error", () => {}));
  return new Kysely<Tables>({ dialect: new PostgresDialect({ pool }) });
}

/** One connection by itself, for what hangs on a connection: locks, and hearing what others say. It is only asked what takes no time. */
export async function connectAlone(address: string): Promise<pg.Client> {
  const client = new pg.Client({ ...settings(address, SCHEMA), query_timeout: ANSWER_MS });
  client.on("error", () => {});
  await client.connect();
  try {
    await mustHoldEveryName(client);
  } catch (error) {
    await client.end();
    throw error;
  }
  return client;
}

/** In another encoding a customer's name could not be kept as it is written. @throws {RecordsFault} `refused` */
async function mustHoldEveryName(client: pg.Client): Promise<void> {
  const { rows } = await client.query<{ encoding: string }>("select current_setting('server_encoding') as encoding");
  const { encoding } = rows[0];
  if (encoding === "UTF8") return;
  const allowed = "UTF8: create database NAME encoding 'UTF8' template template0 makes one";
  throw new RecordsFault("refused", "the PostgreSQL database", {
    problems: [{ path: "encoding of the database", value: encoding, allowed }],
  });
}

/** Says for as long as the connection lives that somebody has the records open. @throws {RecordsFault} `busy` while a restore or a move has them alone */
export async function holdOpen(client: pg.Client): Promise<void> {
  await lockOrBusy(client, "pg_try_advisory_lock_shared");
}

/**
 * Says the same for one transaction, while the connection that says it for good is lost: what is written is not written past a restore.
 *
 * @throws {RecordsFault} `busy` while a restore or a move has them alone
 */
export async function holdOpenWithin(inside: Db): Promise<void> {
  const { rows } = await sql<{ got: boolean }>`select pg_try_advisory_xact_lock_shared(${OPEN_LOCK}) as got`.execute(inside);
  if (!rows[0].got) throw new RecordsFault("busy", "the PostgreSQL database");
}

/**
 * Has the records of a database alone, for a restore or a move.
 *
 * @returns lets them go
 * @throws {RecordsFault} `busy` while anybody has them open
 */
export async function holdAlone(address: string): Promise<() => Promise<void>> {
  const client = await connectAlone(address);
  try {
    await lockOrBusy(client, "pg_try_advisory_lock");
  } catch (error) {
    await client.end();
    throw error;
  }
  return () => client.end();
}

/** The connection that has the records alone may have been cut meanwhile, and with it its lock. @throws {RecordsFault} `busy` */
export async function mustStillBeAlone(inside: Db): Promise<void> {
  const { rows } = await sql<{ got: boolean }>`select pg_try_advisory_xact_lock_shared(${OPEN_LOCK}) as got`.execute(inside);
  if (rows[0].got) throw new RecordsFault("busy", "the PostgreSQL database");
}

async function lockOrBusy(client: pg.Client, lock: "pg_try_advisory_lock" | "pg_try_advisory_lock_shared"): Promise<void> {
  const { rows } = await client.query<{ got: boolean }>(`select ${lock}($1) as got`, [OPEN_LOCK]);
  if (rows[0]?.got !== true) throw new RecordsFault("busy", "the PostgreSQL database");
}
