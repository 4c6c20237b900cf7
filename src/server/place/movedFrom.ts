import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { z } from "zod";

/** Lies in a shop's folder that was moved here, and says from where, so that a move which was cut can be ended. */
export const MOVED_FROM = "moved-from.json";

const schema = z.object({ from: z.string(), database: z.string().nullable() });

interface MovedFrom {
  readonly from: string;
  /** What the database there held then. */
  readonly database: string | null;
}

/** From where a shop's folder was moved; null where it was made here. */
export function movedFrom(folder: string): MovedFrom | null {
  const path = join(folder, MOVED_FROM);
  if (!existsSync(path)) return null;
  const read = schema.safeParse(JSON.parse(readFileSync(path, "utf8")));
  return read.success ? read.data : null;
}
