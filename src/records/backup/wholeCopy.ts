import { dirname, join } from "node:path";
import { PassThrough } from "node:stream";
import { blobsFolder } from "./blobs.ts";
import { MANIFEST, MANIFEST_SUM, WHOLE } from "./manifest.ts";
import { readManifest } from "./verifyBackup.ts";
import { openZip } from "./zipReader.ts";
import { piecesOf, zipWriter } from "./zipWriter.ts";

/**
 * A backup as one file with everything in it. Each file in it has the checksum that it had; whoever takes it verifies it where it arrives.
 *
 * @throws {RecordsFault} `badBackup`, `notFound`
 */
export async function wholeCopy(path: string): Promise<AsyncIterable<Uint8Array>> {
  const { blobs = [], ...manifest } = await readManifest(path);
  if (blobs.length === 0) return piecesOf(path);
  const zip = await openZip(path);
  const out = new PassThrough();
  const into = zipWriter(out, new Date(manifest.madeAt));
  const folder = blobsFolder({ backups: dirname(path) });
  const write = async () => {
    for (const { name } of manifest.files) await into.add(name, zip.pieces(name), name === "records.sqlite" ? "deflate" : "store");
    for (const { name, sha256 } of blobs) await into.addFile(name, join(folder, sha256), "store");
    const text = `${JSON.stringify({ ...manifest, gritwright: WHOLE, files: [...manifest.files, ...blobs] }, null, 1)}\n`;
    const { sha256 } = await into.addText(MANIFEST, text);
    await into.addText(MANIFEST_SUM, sha256);
    await into.end();
  };
  write()
    .catch((error: unknown) => out.destroy(error instanceof Error ? error : new Error(String(error))))
    .finally(() => zip.close());
  return out;
}
