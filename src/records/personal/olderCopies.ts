import { readdir } from "node:fs/promises";
import type { Backups } from "../backup/backups.ts";
import { keptUntil } from "../backup/retention.ts";
import { restoredAt } from "../backup/safetyCopy.ts";
import { safetySchemas } from "../backup/safetySchema.ts";
import type { Runner } from "../database/transaction.ts";
import type { ShopFolder } from "../folder.ts";
import { timeOf } from "../session.ts";
import { SAFETY_COPIES_KEPT_MS } from "../tidy.ts";
import type { OlderCopy } from "./personal.ts";

/** Backups and what lies there from before restores, with the time by which each will have gone. Newest first. */
export async function olderCopies(runner: Runner, { root }: ShopFolder, backups: Pick<Backups, "list">): Promise<OlderCopy[]> {
  const made = await backups.list();
  const scheduled = made.filter(({ why }) => why === "scheduled").map(({ madeAt }) => madeAt);
  const copies = made.map(({ name, madeAt, why }) => {
    const goneBy = why === "scheduled" ? timeOf(keptUntil(madeAt, scheduled)) : null;
    return { name, kind: "backup", madeAt, goneBy } as const;
  });
  const folders = (await readdir(root)).map((name) => ({ name, at: restoredAt(name) }));
  const schemas = runner.engine === "postgres" ? await safetySchemas(runner.db) : [];
  const putAside = [...folders, ...schemas].flatMap(({ name, at }) =>
    at === null ? [] : [{ name, kind: "before restore", madeAt: timeOf(at), goneBy: timeOf(at + SAFETY_COPIES_KEPT_MS) } as const],
  );
  return [...copies, ...putAside].sort((a, b) => (a.madeAt < b.madeAt ? 1 : -1));
}
