import { sql } from "kysely";
import type { Db } from "../database/tables.ts";

const PREFIX = "gritwright_before_restore_";

/** Name of the schema that keeps what was there before a restore; milliseconds since 1970. */
export function safetySchemaName(at: number): string {
  return `${PREFIX}${at}`;
}

/** What lies there from before restores, and when those were, ms since 1970. */
export async function safetySchemas(db: Db): Promise<{ name: string; at: number }[]> {
  const { rows } = await sql<{ name: string }>`select nspname as name from pg_namespace where nspname like ${`${PREFIX}%`}`.execute(db);
  return rows.map(({ name }) => ({ name, at: Number(name.slice(PREFIX.length)) }));
}

/** Drops what lay there before restores that are older than a time, ms since 1970. */
export async function dropOldSchemas(db: Db, before: number): Promise<void> {
  for (const { name, at } of await safetySchemas(db)) if (at < before) await sql`drop schema if exists ${sql.id(name)} cascade`.execute(db);
}
