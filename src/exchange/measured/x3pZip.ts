import { type UnzipFileInfo, unzipSync } from "fflate";
import { measuredFault } from "#contract/problem";

const MOST_ENTRIES = 64;
/** All entries together, unpacked. */
const MOST_UNPACKED = 400_000_000;
/** The format's own compression reaches about 1030 : 1; more is a trap. */
const MOST_RATIO = 1100;

/**
 * The wanted entries of an archive, unpacked under limits that are checked before anything is unpacked: number of entries, stated sizes, ratio. Names are only looked up, never used as paths.
 */
export function unpacked(bytes: Uint8Array): ReadonlyMap<string, Uint8Array> {
  if (bytes[0] !== 0x50 || bytes[1] !== 0x4b) throw measuredFault("notZip", [...bytes.slice(0, 2)], "an archive that begins with PK");
  let entries = 0;
  let total = 0;
  const filter = ({ name, size, originalSize }: UnzipFileInfo): boolean => {
    entries++;
    total += originalSize;
    if (entries > MOST_ENTRIES) throw measuredFault("tooManyEntries", entries, `at most ${MOST_ENTRIES}`);
    if (total > MOST_UNPACKED || originalSize > MOST_RATIO * Math.max(1, size) + 4096)
      throw measuredFault("tooLarge", total, `at most ${MOST_UNPACKED} bytes, no entry over ${MOST_RATIO} times its packed size`);
    return !name.endsWith("/");
  };
  let files: Record<string, Uint8Array>;
  try {
    files = unzipSync(bytes, { filter });
  } catch (fault) {
    if (fault instanceof Error && fault.name === "JobFault") throw fault;
    throw measuredFault("damaged", fault instanceof Error ? fault.message : String(fault), "a whole archive");
  }
  return new Map(Object.entries(files));
}
