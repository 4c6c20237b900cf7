import { createHash, randomBytes } from "node:crypto";
import { existsSync } from "node:fs";
import { mkdir, open, readdir, rename, rm } from "node:fs/promises";
import { basename, join } from "node:path";
import { RecordsFault } from "#contract/records/fault";
import { asRecordsFault } from "../database/driverFault.ts";
import type { ShopFolder } from "../folder.ts";
import { longUnnamed } from "./unnamed.ts";
import { type FileSum, piecesOf } from "./zipWriter.ts";

/*
 * Photos and files of backups, each once: they do not change, and their name is their checksum.
 */

const NAME = /^[0-9a-f]{64}$/;
/** What a process left that was ended while it wrote. */
const MAKING = /^[0-9a-f]{12}\.making$/;
const OWNER_ONLY = { folder: 0o700, file: 0o600 } as const;

/** Where they lie: beside the backups. */
export function blobsFolder({ backups }: Pick<ShopFolder, "backups">): string {
  return join(backups, "blobs");
}

export async function prepareBlobs(folder: string): Promise<void> {
  await mkdir(folder, { recursive: true, mode: OWNER_ONLY.folder });
}

/** Names of those that lie there; none where there is no such folder. */
export async function blobNames(folder: string): Promise<string[]> {
  return existsSync(folder) ? (await readdir(folder)).filter((name) => NAME.test(name)) : [];
}

/** Copies, rather than links: what happens to the shop's own file must not happen to its backup. */
export async function putBlob(folder: string, pieces: AsyncIterable<Uint8Array>): Promise<Pick<FileSum, "bytes" | "sha256">> {
  const making = join(folder, `${randomBytes(6).toString("hex")}.making`);
  const hash = createHash("sha256");
  let bytes = 0;
  const file = await open(making, "wx", OWNER_ONLY.file);
  try {
    for await (const piece of pieces) {
      hash.update(piece);
      bytes += piece.length;
      await file.writeFile(piece);
    }
    await file.sync();
  } catch (error) {
    await file.close();
    await rm(making, { force: true });
    throw error;
  }
  await file.close();
  const sha256 = hash.digest("hex");
  await rename(making, join(folder, sha256));
  return { bytes, sha256 };
}

/** How a file beside a backup is. */
export type BlobState = "sound" | "missing" | "damaged";

export async function blobState(folder: string, { bytes, sha256 }: Pick<FileSum, "bytes" | "sha256">): Promise<BlobState> {
  const found = await sumOf(folder, sha256, () => {});
  if (found === null) return "missing";
  return found.bytes === bytes && found.sha256 === sha256 ? "sound" : "damaged";
}

/** Reads one through. Null where it is not there. */
export async function sumOf(
  folder: string,
  sha256: string,
  take: (piece: Uint8Array) => void,
): Promise<Pick<FileSum, "bytes" | "sha256"> | null> {
  const hash = createHash("sha256");
  let bytes = 0;
  try {
    for await (const piece of piecesOf(join(folder, sha256))) {
      hash.update(piece);
      bytes += piece.length;
      take(piece);
    }
  } catch (cause) {
    const fault = asRecordsFault(cause, `blobs/${basename(sha256)}`);
    if (fault instanceof RecordsFault && fault.kind === "notFound") return null;
    throw fault;
  }
  return { bytes, sha256: hash.digest("hex") };
}

/**
 * Takes out what no backup has named for long, and what was left half written. Whoever calls has the folder of backups alone (`withBackupsAlone`).
 *
 * @param now milliseconds since 1970
 * @returns how many were taken out
 */
export async function freeBlobs(folder: string, named: ReadonlySet<string>, now: number): Promise<number> {
  const there = await readdir(folder);
  const unnamed = there.filter((name) => NAME.test(name) && !named.has(name));
  const gone = new Set(await longUnnamed(folder, unnamed, now));
  const out = there.filter((name) => MAKING.test(name) || gone.has(name));
  for (const name of out) await rm(join(folder, name), { force: true });
  return out.length;
}
