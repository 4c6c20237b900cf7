import { createHash } from "node:crypto";
import type { BackupReport } from "./backups.ts";
import { readBackup, reportOf } from "./verifyBackup.ts";
import type { FileSum } from "./zipWriter.ts";

/** Bytes of a photo or file in today's records by its name; null where it is not there. */
export type TodaysFile = (name: string) => Promise<Uint8Array | null>;

/** Photos and files that should lie beside a backup and do not, or not as they were. */
export interface Gaps {
  /** Today's records have them, byte for byte. */
  readonly today: readonly FileSum[];
  /** Names of those that are nowhere. */
  readonly lost: readonly string[];
}

/**
 * Verifies a backup that is to be restored. What is missing or damaged beside it is looked for in today's records.
 *
 * @param withoutLost whether it is to be restored without what is nowhere
 * @throws {RecordsFault} `badBackup` with what is wrong; `notFound`
 */
export async function verifyWithGaps(
  path: string,
  todays: TodaysFile,
  withoutLost: boolean,
): Promise<{ report: BackupReport; gaps: Gaps }> {
  const today: FileSum[] = [];
  const lost: string[] = [];
  const mayLack = async (file: FileSum) => {
    const isThere = (await soundBytes(file, todays)) !== null;
    if (isThere) today.push(file);
    else if (withoutLost) lost.push(file.name);
    return isThere || withoutLost;
  };
  const manifest = await readBackup(path, () => () => {}, { mayLack });
  return { report: reportOf(manifest), gaps: { today, lost } };
}

/** Null where today's records do not have it, or not those bytes. */
export async function soundBytes({ name, bytes, sha256 }: FileSum, todays: TodaysFile): Promise<Uint8Array | null> {
  // What cannot be read there is not there: the restore is what mends it.
  const found = await todays(name).catch(() => null);
  const isSound = found?.length === bytes && createHash("sha256").update(found).digest("hex") === sha256;
  return isSound ? found : null;
}
