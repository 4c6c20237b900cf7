import { createHash, type Hash } from "node:crypto";
import { RecordsFault } from "#contract/records/fault";
import { asRecordsFault } from "../database/driverFault.ts";
import type { BackupReport } from "./backups.ts";
import { MANIFEST, MANIFEST_SUM, type Manifest, manifestSchema } from "./manifest.ts";
import { readZip, type Taker } from "./zipFile.ts";

/** Largest manifest that is taken in, bytes; a shop with a million photos stays under it. */
const MOST_MANIFEST = 300_000_000;

/** @throws {RecordsFault} `badBackup` with what is wrong */
export async function verifyBackup(path: string): Promise<BackupReport> {
  const { madeAt, programVersion, schema, files, missing, counts } = await readBackup(path, () => () => {});
  return { madeAt, programVersion, schema, files: files.length, missing, counts };
}

/**
 * Reads a backup through, hands out what is in it, and compares every size and checksum with the manifest.
 * What was handed out is to be believed only when this returns.
 *
 * @throws {RecordsFault} `badBackup` with what is wrong; `notFound`
 */
export async function readBackup(path: string, take: (name: string) => Taker): Promise<Manifest> {
  const read = new Map<string, { bytes: number; hash: Hash }>();
  const manifestPieces: Uint8Array[] = [];
  const sumPieces: Uint8Array[] = [];
  try {
    await readZip(path, (name) => {
      if (name === MANIFEST) return collect(path, manifestPieces);
      if (name === MANIFEST_SUM) return collect(path, sumPieces);
      if (read.has(name)) throw bad(path, name, "each file once");
      const seen = { bytes: 0, hash: createHash("sha256") };
      read.set(name, seen);
      const taker = take(name);
      return (piece) => {
        if (piece !== null) {
          seen.bytes += piece.length;
          seen.hash.update(piece);
        }
        taker(piece);
      };
    });
  } catch (cause) {
    const fault = asRecordsFault(cause, path);
    // Whatever else a reader of zips throws means one thing.
    throw fault instanceof RecordsFault ? fault : new RecordsFault("badBackup", path, { cause });
  }
  const manifest = manifestOf(path, Buffer.concat(manifestPieces), Buffer.concat(sumPieces).toString("latin1"));
  compare(path, manifest, read);
  return manifest;
}

function collect(path: string, pieces: Uint8Array[]): Taker {
  let bytes = 0;
  return (piece) => {
    bytes += piece?.length ?? 0;
    if (bytes > MOST_MANIFEST) throw bad(path, MANIFEST, `at most ${MOST_MANIFEST} bytes`);
    if (piece !== null) pieces.push(piece.slice());
  };
}

function manifestOf(path: string, bytes: Buffer, sum: string): Manifest {
  if (bytes.length === 0) throw bad(path, MANIFEST, "a manifest: the file was cut short, or is no backup");
  if (createHash("sha256").update(bytes).digest("hex") !== sum) throw bad(path, MANIFEST, "the bytes that its checksum was made from");
  try {
    return manifestSchema.parse(JSON.parse(bytes.toString("utf8")));
  } catch {
    throw bad(path, MANIFEST, "a manifest that this program can read");
  }
}

function compare(path: string, { files }: Manifest, read: ReadonlyMap<string, { bytes: number; hash: Hash }>): void {
  for (const { name, bytes, sha256 } of files) {
    const seen = read.get(name);
    if (seen === undefined) throw bad(path, name, "a file that the manifest names");
    if (seen.bytes !== bytes || seen.hash.digest("hex") !== sha256)
      throw bad(path, name, "the bytes that the manifest's checksum was made from");
  }
  const stranger = [...read.keys()].find((name) => !files.some((file) => file.name === name));
  if (stranger !== undefined) throw bad(path, stranger, "only files that the manifest names");
}

function bad(path: string, name: string, allowed: string): RecordsFault {
  return new RecordsFault("badBackup", path, { problems: [{ path: name, value: null, allowed }] });
}
