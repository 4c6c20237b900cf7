import { existsSync } from "node:fs";
import { readdir, stat } from "node:fs/promises";
import { join } from "node:path";
import { backupNameParts, isZip } from "../backup/backupName.ts";
import type { Backups } from "../backup/backups.ts";
import { blobNames, blobsFolder } from "../backup/blobs.ts";
import { keptUntil } from "../backup/retention.ts";
import { restoredAt } from "../backup/safetyCopy.ts";
import { safetySchemas } from "../backup/safetySchema.ts";
import { UNNAMED_KEPT_MS, unnamedSince } from "../backup/unnamed.ts";
import { readManifest } from "../backup/verifyBackup.ts";
import type { Runner } from "../database/transaction.ts";
import type { ShopFolder } from "../folder.ts";
import { timeOf } from "../session.ts";
import { SAFETY_COPIES_KEPT_MS } from "../tidy.ts";
import type { OlderCopy } from "./personal.ts";

/** What lies beside the backups goes with a backup that is made, once a day, and not before. */
const DAY_MS = 86_400_000;

/** Backups and what lies there from before restores, with the time by which each will have gone. Newest first. */
export async function olderCopies(runner: Runner, folder: ShopFolder, backups: Pick<Backups, "list">): Promise<OlderCopy[]> {
  const { root } = folder;
  const made = await backups.list();
  const scheduled = made.filter(({ why }) => why === "scheduled").map(({ madeAt }) => madeAt);
  // Any of them may be of the person, also one that was taken out of the records before.
  const longer = (await blobNames(blobsFolder(folder))).length > 0 ? UNNAMED_KEPT_MS + DAY_MS : 0;
  const copies = made.map(({ name, madeAt, why }) => {
    const goneBy = why === "scheduled" ? timeOf(keptUntil(madeAt, scheduled) + longer) : null;
    return { name, kind: "backup", madeAt, goneBy } as const;
  });
  const folders = (await readdir(root)).map((name) => ({ name, at: restoredAt(name) }));
  const schemas = runner.engine === "postgres" ? await safetySchemas(runner.db) : [];
  const putAside = [...folders, ...schemas].flatMap(({ name, at }) =>
    at === null ? [] : [{ name, kind: "before restore", madeAt: timeOf(at), goneBy: timeOf(at + SAFETY_COPIES_KEPT_MS) } as const],
  );
  const all = [...copies, ...(await renamed(folder)), ...(await unnamed(folder)), ...putAside];
  return all.sort((a, b) => (a.madeAt < b.madeAt ? 1 : -1));
}

/** Backups that somebody called something else; nobody takes them out. Of one that cannot be read, the time of the file has to do. */
async function renamed({ backups }: ShopFolder): Promise<OlderCopy[]> {
  if (!existsSync(backups)) return [];
  const others = (await readdir(backups)).filter((name) => isZip(name) && backupNameParts(name) === null);
  return Promise.all(
    others.map(async (name) => {
      const path = join(backups, name);
      const manifest = await readManifest(path).catch(() => null);
      return { name, kind: "backup", madeAt: manifest?.madeAt ?? timeOf((await stat(path)).mtimeMs), goneBy: null } as const;
    }),
  );
}

/** Photos and files that no backup names any more, as one: until the last of them will have gone. */
async function unnamed(folder: ShopFolder): Promise<OlderCopy[]> {
  const blobs = blobsFolder(folder);
  const since = [...(await unnamedSince(blobs)).values()];
  if (since.length === 0) return [];
  const last = Math.max(...since);
  return [{ name: "blobs", kind: "backup", madeAt: timeOf(last), goneBy: timeOf(last + UNNAMED_KEPT_MS + DAY_MS) }];
}
