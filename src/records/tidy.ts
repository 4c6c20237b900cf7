import { existsSync } from "node:fs";
import { readdir, rm, stat } from "node:fs/promises";
import { join } from "node:path";
import { forgetSessions } from "./accounts/sessions.ts";
import { forgetTries } from "./accounts/tries.ts";
import { restoredAt } from "./backup/safetyCopy.ts";
import { transaction } from "./database/transaction.ts";
import type { ShopFolder } from "./folder.ts";
import { type Session, timeOf } from "./session.ts";
import { fileNameOf } from "./things/attachments.ts";

const DAY_MS = 86_400_000;
/** Nobody repeats a request after so long. */
const ANSWERS_KEPT_MS = 30 * DAY_MS;
/** Long after every wait for it is over. */
const TRIES_KEPT_MS = DAY_MS;
/** A file that is being added lies there before its row does, for a moment. */
const FILES_LEFT_MS = DAY_MS;
/** Long enough to find out that a restore was a mistake; they hold what may have been erased since. */
const SAFETY_COPIES_KEPT_MS = 30 * DAY_MS;

/**
 * Takes out what is of no more use: old answers kept for retries, sessions that are over, files whose row was never written, or is gone, and what lay
 * there before old restores.
 */
export async function tidy({ runner, now }: Session, { root, live }: ShopFolder): Promise<void> {
  for (const name of await readdir(root)) {
    const at = restoredAt(name);
    if (at !== null && now() - at > SAFETY_COPIES_KEPT_MS) await rm(join(root, name), { recursive: true });
  }
  await transaction(runner, async (db) => {
    await db
      .deleteFrom("once")
      .where("at", "<", timeOf(now() - ANSWERS_KEPT_MS))
      .execute();
    await forgetSessions(db, now());
    await forgetTries(db, now() - TRIES_KEPT_MS);
  });
  for (const [kind, folder] of [
    ["photos", join(live, "photos")],
    ["profileFiles", join(live, "profiles")],
  ] as const) {
    if (!existsSync(folder)) continue;
    const names = await readdir(folder);
    const rows = await runner.db.selectFrom(kind).select("body").execute();
    const used = new Set(rows.map(({ body }) => fileNameOf(JSON.parse(body))));
    for (const path of names.filter((name) => !used.has(name)).map((name) => join(folder, name))) {
      if (now() - (await stat(path)).mtimeMs > FILES_LEFT_MS) await rm(path, { force: true });
    }
  }
}
