import { createHash } from "node:crypto";
import { dirname } from "node:path";
import { RecordsFault } from "#contract/records/fault";
import type { Problem } from "#engine/fault";
import { asRecordsFault } from "../database/driverFault.ts";
import type { BackupReport } from "./backups.ts";
import { blobsFolder, sumOf } from "./blobs.ts";
import { MANIFEST, MANIFEST_SUM, type Manifest, manifestSchema } from "./manifest.ts";
import { openZip, type ZipReader } from "./zipReader.ts";
import type { FileSum } from "./zipWriter.ts";

/** Largest manifest that is taken in, bytes; a shop with a million photos stays under it. */
const MOST_MANIFEST = 300_000_000;
/** How many lost or damaged files are told one by one. */
const MOST_TOLD = 20;

/** Takes the bytes of one file, piece by piece; `null` is its end. */
export type Taker = (piece: Uint8Array | null) => void;

const NOTHING: Taker = () => {};

/** @throws {RecordsFault} `badBackup` with what is wrong */
export async function verifyBackup(path: string): Promise<BackupReport> {
  return reportOf(await readBackup(path, () => NOTHING));
}

export function reportOf({ madeAt, programVersion, schema, files, blobs = [], missing, counts }: Manifest): BackupReport {
  return { madeAt, programVersion, schema, files: files.length + blobs.length, missing, counts };
}

interface ReadOptions {
  /** Checksums of files beside it that have just been read through, and are not read again. */
  readonly known?: ReadonlySet<string>;
  /** Folder of the files beside it; usually that of the backup. */
  readonly blobs?: string;
  /** Names of files beside it that are not read, nor handed out. */
  readonly leftOut?: ReadonlySet<string>;
  /** Asked of each file beside it that is missing or damaged: whether the backup is to be taken without it. */
  readonly mayLack?: (file: FileSum) => Promise<boolean>;
}

/**
 * Reads a backup through, hands out what belongs to it, and compares every size and checksum with the manifest.
 * What was handed out is to be believed only when this returns.
 *
 * @param take is called with each name, once, before its bytes; what it throws ends the reading
 * @throws {RecordsFault} `badBackup` with what is wrong; `notFound`
 */
export async function readBackup(path: string, take: (name: string) => Taker, options: ReadOptions = {}): Promise<Manifest> {
  return withZip(path, async (zip) => {
    const manifest = await manifestIn(path, zip);
    mustHold(path, zip, manifest);
    for (const file of manifest.files) await readOne(path, file, take(file.name), zip);
    await readBlobs(path, manifest, take, options);
    return manifest;
  });
}

/** What a backup says of itself; nothing else of it is read. @throws {RecordsFault} `badBackup`, `notFound` */
export function readManifest(path: string): Promise<Manifest> {
  return withZip(path, (zip) => manifestIn(path, zip));
}

async function withZip<Answer>(path: string, work: (zip: ZipReader) => Promise<Answer>): Promise<Answer> {
  try {
    const zip = await openZip(path);
    try {
      return await work(zip);
    } finally {
      zip.close();
    }
  } catch (cause) {
    const fault = asRecordsFault(cause, path);
    // Whatever else a reader of zips throws means one thing.
    throw fault instanceof RecordsFault ? fault : new RecordsFault("badBackup", path, { cause });
  }
}

async function manifestIn(path: string, zip: ZipReader): Promise<Manifest> {
  if (![MANIFEST, MANIFEST_SUM].every((name) => zip.names.includes(name)))
    throw bad(path, MANIFEST, "a manifest: the file was cut short, or is no backup");
  const [bytes, sum] = [await whole(path, zip, MANIFEST), await whole(path, zip, MANIFEST_SUM)];
  if (createHash("sha256").update(bytes).digest("hex") !== sum.toString("latin1"))
    throw bad(path, MANIFEST, "the bytes that its checksum was made from");
  try {
    return manifestSchema.parse(JSON.parse(bytes.toString("utf8")));
  } catch {
    throw bad(path, MANIFEST, "a manifest that this program can read");
  }
}

async function whole(path: string, zip: ZipReader, name: string): Promise<Buffer> {
  const pieces: Uint8Array[] = [];
  let bytes = 0;
  await zip.read(name, (piece) => {
    bytes += piece.length;
    if (bytes > MOST_MANIFEST) throw bad(path, name, `at most ${MOST_MANIFEST} bytes`);
    pieces.push(piece);
  });
  return Buffer.concat(pieces);
}

/** What is in the zip is what the manifest names, each once. */
function mustHold(path: string, { names }: ZipReader, { files, blobs = [] }: Manifest): void {
  const there = new Set(names);
  const lacking = files.find(({ name }) => !there.has(name));
  if (lacking !== undefined) throw bad(path, lacking.name, "a file that the manifest names");
  const named = new Set([MANIFEST, MANIFEST_SUM, ...files.map(({ name }) => name)]);
  const stranger = names.find((name) => !named.has(name));
  if (stranger !== undefined) throw bad(path, stranger, "only files that the manifest names");
  const all = [...files, ...blobs].map(({ name }) => name);
  if (new Set(all).size !== all.length) throw bad(path, MANIFEST, "each file once");
}

async function readOne(path: string, { name, bytes, sha256 }: FileSum, take: Taker, zip: ZipReader): Promise<void> {
  const hash = createHash("sha256");
  let seen = 0;
  await zip.read(name, (piece) => {
    seen += piece.length;
    if (seen > bytes) throw bad(path, name, `${bytes} bytes`);
    hash.update(piece);
    take(piece);
  });
  if (seen !== bytes || hash.digest("hex") !== sha256) throw bad(path, name, "the bytes that the manifest's checksum was made from");
  take(null);
}

/** All that are lost or damaged are told, not the first alone. */
async function readBlobs(path: string, { blobs = [] }: Manifest, take: (name: string) => Taker, options: ReadOptions): Promise<void> {
  const { known = new Set(), leftOut = new Set(), mayLack = async () => false } = options;
  const { blobs: folder = blobsFolder({ backups: dirname(path) }) } = options;
  const wrong: Problem[] = [];
  let lost = 0;
  for (const file of blobs) {
    const { name, bytes, sha256 } = file;
    if (leftOut.has(name)) continue;
    const taker = take(name);
    if (known.has(sha256)) continue;
    const found = await sumOf(folder, sha256, taker);
    taker(null);
    if (found?.sha256 === sha256 && found.bytes === bytes) continue;
    if (await mayLack(file)) continue;
    if (found === null) lost += 1;
    wrong.push({ path: name, value: found === null ? "missing" : "damaged", allowed: `blobs/${sha256}, as it was` });
  }
  if (wrong.length === 0) return;
  const told = wrong.slice(0, MOST_TOLD);
  const [of, damaged] = [`of ${blobs.length}`, wrong.length - lost];
  const value = [...(lost > 0 ? [`${lost} ${of} missing`] : []), ...(damaged > 0 ? [`${damaged} ${of} damaged`] : [])].join(", ");
  const allowed = "the folder blobs beside the backup, whole: a backup is kept elsewhere together with it, or made with --whole";
  throw new RecordsFault("badBackup", path, { problems: [{ path: "blobs", value, allowed }, ...told] });
}

function bad(path: string, name: string, allowed: string): RecordsFault {
  return new RecordsFault("badBackup", path, { problems: [{ path: name, value: null, allowed }] });
}
