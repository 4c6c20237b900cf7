import { createWriteStream, existsSync } from "node:fs";
import { open, readdir, rename, rm, stat } from "node:fs/promises";
import { join } from "node:path";
import { THING_KINDS } from "#contract/records/auditEntry";
import { RecordsFault } from "#contract/records/fault";
import { schemaState } from "../database/migrate.ts";
import { STEPS } from "../database/migrations/steps.ts";
import { openSqlite } from "../database/sqlite.ts";
import type { SqliteFile } from "../database/sqliteShape.ts";
import { syncFolder } from "../files/syncedFile.ts";
import { prepareBackups, type ShopFolder } from "../folder.ts";
import { ledgerText } from "../personal/ledger.ts";
import { fileNameIn, fileNamesPerhaps } from "../things/attachments.ts";
import { withBackupsAlone } from "./alone.ts";
import { blobState, blobsFolder, prepareBlobs, putBlob } from "./blobs.ts";
import { MANIFEST, MANIFEST_SUM, type Manifest, SHARING, WHOLE } from "./manifest.ts";
import type { Snapshot, WithSnapshot } from "./snapshot.ts";
import { readBackup } from "./verifyBackup.ts";
import { type FileSum, type ZipWriter, zipWriter } from "./zipWriter.ts";

export interface ArchiveOptions {
  /** Name of the file in the folder of backups. */
  readonly name: string;
  readonly madeAt: string;
  readonly why: Manifest["why"];
  /** Photos and files in it, instead of beside it. */
  readonly isWhole: boolean;
  readonly programVersion: string;
}

export interface ArchiveMade {
  readonly bytes: number;
  readonly lostFiles: number;
}

/** A file that is copied elsewhere keeps this: nobody else on a machine reads it. */
const OWNER_ONLY = 0o600;
/** What a process left that was ended while it made a backup; it holds what the records hold. */
const LEFT = /\.zip\.(?:making|copy(?:-wal|-shm|-journal)?)$/;

/**
 * Copies the database as of one moment while it is used, puts the copy into one file, and the files it speaks of with it or beside it; reads all of that
 * again; and gives the file its name last. What cannot be read again never gets it.
 *
 * @returns bytes of the file, and how many photos and profile files it lacks since they were lost before
 * @throws {RecordsFault} `badBackup` where what was written is not what it should be; `full`, `readOnly`; `busy` where another one is being made
 */
export async function makeArchive(folder: ShopFolder, withSnapshot: WithSnapshot, asked: ArchiveOptions): Promise<ArchiveMade> {
  // A root that is gone, as of a disk that was taken out, is not made anew.
  if (!existsSync(folder.root)) throw new RecordsFault("folderGone", folder.root);
  prepareBackups(folder);
  const blobs = blobsFolder(folder);
  await prepareBlobs(blobs);
  return withBackupsAlone(blobs, async () => {
    await removeLeft(folder);
    const making = join(folder.backups, `${asked.name}.making`);
    try {
      const known = await withSnapshot((snapshot) => write(folder, snapshot, making, asked));
      const { missing } = await readBackup(making, () => () => {}, { known, blobs });
      await rename(making, join(folder.backups, asked.name));
      await syncFolder(folder.backups);
      return { bytes: (await stat(join(folder.backups, asked.name))).size, lostFiles: missing.length };
    } finally {
      await removeLeft(folder);
    }
  });
}

async function removeLeft({ backups }: ShopFolder): Promise<void> {
  for (const name of await readdir(backups)) if (LEFT.test(name)) await rm(join(backups, name), { force: true });
}

/** @returns checksums of the files beside it, which are there and sound */
async function write(folder: ShopFolder, snapshot: Snapshot, making: string, asked: ArchiveOptions): Promise<Set<string>> {
  const { madeAt, why, programVersion, isWhole } = asked;
  const copy = making.replace(/making$/, "copy");
  await snapshot.copyTo(copy);
  const { at, counts, attached, perhaps } = await inside(copy);
  const zip = zipWriter(createWriteStream(making, { flags: "wx", mode: OWNER_ONLY }), new Date(madeAt));
  const files: FileSum[] = [await zip.addFile("records.sqlite", copy, "deflate")];
  await rm(copy);
  const blobs: FileSum[] = [];
  const missing: string[] = [];
  const into = blobsFolder(folder);
  for (const name of [...attached, ...perhaps]) {
    const kept = isWhole ? await added(zip, snapshot, name) : await beside(into, snapshot, name);
    // A photo that was lost must not keep everything else from being backed up; the manifest says so.
    if (kept !== null) (isWhole ? files : blobs).push(kept);
    else if (attached.has(name)) missing.push(name);
  }
  await syncFolder(into);
  const erasures = await snapshot.erasures();
  if (erasures.length > 0) files.push(await zip.addText("erasures.jsonl", ledgerText(erasures)));
  const about = { kind: "backup", madeAt, why, programVersion, schema: at, counts, missing, files } as const;
  const manifest: Manifest = blobs.length === 0 ? { gritwright: WHOLE, ...about } : { gritwright: SHARING, ...about, blobs };
  const { sha256 } = await zip.addText(MANIFEST, `${JSON.stringify(manifest, null, 1)}\n`);
  await zip.addText(MANIFEST_SUM, sha256);
  await zip.end();
  const file = await open(making, "r+");
  await file.sync().finally(() => file.close());
  return new Set(blobs.map((blob) => blob.sha256));
}

async function added(zip: ZipWriter, snapshot: Snapshot, name: string): Promise<FileSum | null> {
  const pieces = await snapshot.file(name);
  return pieces === null ? null : zip.add(name, pieces, "store");
}

/** Lays a file beside the backup where it is not there already, sound. Null where the shop's own is lost too. */
async function beside(blobs: string, snapshot: Snapshot, name: string): Promise<FileSum | null> {
  const [, sha256] = /\/([0-9a-f]{64})\./.exec(name) ?? [];
  const bytes = sha256 === undefined ? null : await sizeOf(join(blobs, sha256));
  if (sha256 !== undefined && bytes !== null && (await blobState(blobs, { bytes, sha256 })) === "sound") return { name, bytes, sha256 };
  const pieces = await snapshot.file(name);
  if (pieces === null) return null;
  const put = await putBlob(blobs, pieces);
  if ((await blobState(blobs, put)) === "sound") return { name, ...put };
  throw new RecordsFault("badBackup", join(blobs, put.sha256), {
    problems: [{ path: name, value: "damaged", allowed: "what was written" }],
  });
}

async function sizeOf(path: string): Promise<number | null> {
  return existsSync(path) ? (await stat(path)).size : null;
}

/** Looks into the copy, and leaves it as one file. */
async function inside(copy: string): Promise<{ at: string; counts: Record<string, number> } & Attached> {
  const { db, raw } = openSqlite(copy);
  try {
    const { at } = await schemaState({ db, engine: "sqlite", chance: () => 0 }, STEPS);
    const counts = Object.fromEntries(THING_KINDS.map((kind) => [kind, countIn(raw, kind)]));
    const names = attachedNames(raw);
    raw.pragma("journal_mode = DELETE");
    return { at, counts, ...names };
  } finally {
    await db.destroy();
  }
}

/** Nothing of a table that an older schema does not have yet. */
function countIn(raw: SqliteFile, kind: string): number {
  const exists = raw.prepare("select 1 from sqlite_master where type = 'table' and name = ?").get(kind);
  return exists === undefined ? 0 : (raw.prepare(`select count(*) as n from "${kind}"`).get() as { n: number }).n;
}

interface Attached {
  /** Files that rows speak of. */
  readonly attached: ReadonlySet<string>;
  /** Files that a row which cannot be read may speak of; that one of them is not there says nothing. */
  readonly perhaps: ReadonlySet<string>;
}

function attachedNames(raw: SqliteFile): Attached {
  const attached = new Set<string>();
  const perhaps = new Set<string>();
  for (const kind of ["photos", "profileFiles"])
    for (const { body } of raw.prepare(`select body from "${kind}"`).all() as { body: string }[]) {
      const name = fileNameIn(body);
      if (name !== null) attached.add(name);
      else for (const guess of fileNamesPerhaps(body)) perhaps.add(guess);
    }
  return { attached, perhaps: new Set([...perhaps].filter((name) => !attached.has(name))) };
}
