import { existsSync, readFileSync } from "node:fs";
import { open } from "node:fs/promises";
import { dirname } from "node:path";
import { sql } from "kysely";
import { z } from "zod";
import { RecordsFault } from "#contract/records/fault";
import { id, instant } from "#contract/records/fields";
import type { Db } from "../database/tables.ts";
import { syncFolder } from "../files/syncedFile.ts";
import type { ShopFolder } from "../folder.ts";

/** An erasure that was asked for. The ledger lies outside what a restore brings back, so that an older database learns of it. */
const entrySchema = z.strictObject({ bowlerId: id, at: instant, by: id });
export type Erasure = z.output<typeof entrySchema>;

/** Which bowlers' data were erased, and when; no names. */
export interface Ledger {
  add(entry: Erasure): Promise<void>;
  /** @throws {RecordsFault} `damaged` where a whole line of it cannot be read */
  all(): Promise<Erasure[]>;
}

/** In the shop's folder alone. */
export function ledgerInFolder({ erasures }: Pick<ShopFolder, "erasures">): Ledger {
  return {
    async add(entry) {
      const file = await open(erasures, "a");
      try {
        await file.writeFile(lineOf(entry));
        await file.sync();
      } finally {
        await file.close();
      }
      await syncFolder(dirname(erasures));
    },
    async all() {
      if (!existsSync(erasures)) return [];
      const text = readFileSync(erasures, "utf8");
      // A line that was cut short by a power cut was never acknowledged, and nothing was erased for it.
      return text
        .slice(0, text.lastIndexOf("\n") + 1)
        .split("\n")
        .filter((line) => line !== "")
        .map((line) => read(line, erasures));
    },
  };
}

/**
 * In a table, for all servers of the database, and in each server's folder, for the day when an older dump is put back by other means. Each learns
 * what only the other has.
 */
export function ledgerOnServer(db: Db, inFolder: Ledger): Ledger {
  const inTable = ledgerInTable(db);
  return {
    async add(entry) {
      await inTable.add(entry);
      await inFolder.add(entry);
    },
    async all() {
      const [table, folder] = [await inTable.all(), await inFolder.all()];
      for (const entry of lacking(folder, table)) await inTable.add(entry);
      for (const entry of lacking(table, folder)) await inFolder.add(entry);
      return joined(table, folder);
    },
  };
}

export function ledgerInTable(db: Db): Ledger {
  return {
    async add(entry) {
      await db
        .insertInto("erasures")
        .values(entry)
        .onConflict((conflict) => conflict.column("bowlerId").doNothing())
        .execute();
    },
    all: () => db.selectFrom("erasures").selectAll().orderBy("bowlerId").execute(),
  };
}

/** What the table of a PostgreSQL database says; nothing where an older schema, or none, has no such table. */
export async function erasuresOnServer(db: Db): Promise<Erasure[]> {
  const { rows } = await sql<{ found: unknown }>`select to_regclass('erasures') as found`.execute(db);
  return rows[0].found === null ? [] : ledgerInTable(db).all();
}

/** Entries of both, one a bowler. */
export function joined(...ledgers: readonly (readonly Erasure[])[]): Erasure[] {
  return [...new Map(ledgers.flat().map((entry) => [entry.bowlerId, entry])).values()];
}

/** A ledger as its file has it. */
export function ledgerText(entries: readonly Erasure[]): string {
  return entries.map(lineOf).join("");
}

function lineOf({ bowlerId, at, by }: Erasure): string {
  return `${JSON.stringify({ bowlerId, at, by })}\n`;
}

function lacking(from: readonly Erasure[], inside: readonly Erasure[]): Erasure[] {
  const there = new Set(inside.map(({ bowlerId }) => bowlerId));
  return from.filter(({ bowlerId }) => !there.has(bowlerId));
}

function read(line: string, path: string): Erasure {
  try {
    return entrySchema.parse(JSON.parse(line));
  } catch (cause) {
    throw new RecordsFault("damaged", path, { cause });
  }
}
