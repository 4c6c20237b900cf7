import { readdir, rm } from "node:fs/promises";
import { join } from "node:path";
import { forgetSessions } from "./accounts/sessions.ts";
import { forgetTries } from "./accounts/tries.ts";
import { restoredAt } from "./backup/safetyCopy.ts";
import { dropOldSchemas } from "./backup/safetySchema.ts";
import type { Db } from "./database/tables.ts";
import { type Runner, transaction } from "./database/transaction.ts";
import type { FileStore } from "./files/fileStore.ts";
import type { ShopFolder } from "./folder.ts";
import { timeOf } from "./session.ts";
import { fileNameIn } from "./things/attachments.ts";

const DAY_MS = 86_400_000;
/** Nobody repeats a request after so long. */
const ANSWERS_KEPT_MS = 30 * DAY_MS;
/** Long after every wait for it is over. */
const TRIES_KEPT_MS = DAY_MS;
/** A file that is being added may lie there before its row does, for a moment. */
const FILES_LEFT_MS = DAY_MS;
/** Long enough to find out that a restore was a mistake; they hold what may have been erased since. */
export const SAFETY_COPIES_KEPT_MS = 30 * DAY_MS;

interface TidyParts {
  readonly runner: Runner;
  readonly files: FileStore;
  readonly folder: ShopFolder;
  /** Now, ms since 1970. */
  readonly now: number;
}

/**
 * Takes out what is of no more use to any shop of the database: old answers kept for retries, sessions that are over, files whose row was never
 * written, or is gone, and what lay there before old restores.
 */
export async function tidy({ runner, files, folder: { root }, now }: TidyParts): Promise<void> {
  for (const name of await readdir(root)) {
    const at = restoredAt(name);
    if (at !== null && now - at > SAFETY_COPIES_KEPT_MS) await rm(join(root, name), { recursive: true });
  }
  if (runner.engine === "postgres") await dropOldSchemas(runner.db, now - SAFETY_COPIES_KEPT_MS);
  await transaction(runner, async (db) => {
    await db
      .deleteFrom("once")
      .where("at", "<", timeOf(now - ANSWERS_KEPT_MS))
      .execute();
    await forgetSessions(db, now);
    await forgetTries(db, now - TRIES_KEPT_MS);
  });
  let finish = async (): Promise<void> => {};
  await transaction(runner, async (db) => {
    const old = await files.olderThan(db, now - FILES_LEFT_MS);
    const used = old.length === 0 ? new Set<string>() : await usedFiles(db);
    // What a row that cannot be read speaks of is not known: then nothing goes.
    if (used === null) return;
    finish = await files.remove(
      db,
      old.filter((name) => !used.has(name)),
    );
  });
  await finish();
}

/** Names of the files that rows of any shop speak of; null where a row cannot be read, whose file then is not known. */
async function usedFiles(db: Db): Promise<ReadonlySet<string> | null> {
  const names = new Set<string>();
  for (const kind of ["photos", "profileFiles"] as const)
    for (const { body } of await db.selectFrom(kind).select("body").execute()) {
      const name = fileNameIn(body);
      if (name === null) return null;
      names.add(name);
    }
  return names;
}

/** Names of the files that belong to the records: those that rows speak of, or all there are where a row cannot be read. */
export async function filesOfRecords(db: Db, files: FileStore): Promise<ReadonlySet<string>> {
  return (await usedFiles(db)) ?? new Set(await files.olderThan(db, Number.POSITIVE_INFINITY));
}
