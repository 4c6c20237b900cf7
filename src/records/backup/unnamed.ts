import { readFile, rm } from "node:fs/promises";
import { join } from "node:path";
import { z } from "zod";
import { writeSynced } from "../files/syncedFile.ts";

/** For how long a photo or file beside the backups is kept that no backup names: one that was moved away may come back. */
export const UNNAMED_KEPT_MS = 30 * 86_400_000;

/** In the folder of the photos and files; not there while a backup names each. */
const NOTE = "unnamed.json";
/** Since when no backup has named it, by checksum. */
const noteSchema = z.record(z.string(), z.iso.datetime());

/**
 * Notes since when no backup has named them.
 *
 * @param unnamed checksums of all that no backup names now
 * @param now milliseconds since 1970
 * @returns those that no backup has named for longer than they are kept
 */
export async function longUnnamed(folder: string, unnamed: readonly string[], now: number): Promise<string[]> {
  const before = await unnamedSince(folder);
  // A time to come is one of a clock that was wrong.
  const since = new Map(unnamed.map((sha256) => [sha256, Math.min(before.get(sha256) ?? now, now)]));
  const isLong = (sha256: string) => now - (since.get(sha256) ?? now) >= UNNAMED_KEPT_MS;
  const kept = unnamed.filter((sha256) => !isLong(sha256));
  const note = Object.fromEntries(kept.map((sha256) => [sha256, new Date(since.get(sha256) ?? now).toISOString()]));
  if (kept.length === 0) await rm(join(folder, NOTE), { force: true });
  else await writeSynced(join(folder, NOTE), Buffer.from(`${JSON.stringify(note, null, 1)}\n`));
  return unnamed.filter(isLong);
}

/** Since when no backup has named what lies there, ms since 1970; nothing where the note cannot be read, and the time begins anew. */
export async function unnamedSince(folder: string): Promise<ReadonlyMap<string, number>> {
  const text = await readFile(join(folder, NOTE), "utf8").catch(() => null);
  const note = text === null ? null : readNote(text);
  return new Map(Object.entries(note ?? {}).map(([sha256, at]) => [sha256, Date.parse(at)]));
}

function readNote(text: string): z.output<typeof noteSchema> | null {
  try {
    return noteSchema.parse(JSON.parse(text));
  } catch {
    return null;
  }
}
