import { createHash } from "node:crypto";
import { once } from "node:events";
import { createReadStream, createWriteStream } from "node:fs";
import { open } from "node:fs/promises";
import { Unzip, UnzipInflate, UnzipPassThrough, Zip, ZipDeflate, ZipPassThrough } from "fflate";

export interface ZipEntry {
  readonly name: string;
  readonly bytes: number;
  readonly sha256: string;
}

/** A zip file being written piece by piece: no file of it is ever whole in memory. */
export interface ZipWriter {
  /** @param squeeze pictures do not get smaller, tables do */
  addFile(name: string, path: string, squeeze: "deflate" | "store"): Promise<ZipEntry>;
  add(name: string, pieces: AsyncIterable<Uint8Array>, squeeze: "deflate" | "store"): Promise<ZipEntry>;
  addText(name: string, text: string): Promise<ZipEntry>;
  /** Ends the file and syncs it. */
  end(): Promise<void>;
  abandon(): void;
}

/** A file that is copied elsewhere keeps this: nobody else on a machine reads it. */
const OWNER_ONLY = 0o600;

export function zipWriter(path: string): ZipWriter {
  const out = createWriteStream(path, { flags: "wx", mode: OWNER_ONLY });
  let failure: Error | null = null;
  out.on("error", (error) => {
    failure = error;
  });
  const zip = new Zip((error, chunk) => {
    if (error !== null) failure = error;
    else out.write(chunk);
  });
  const flowing = async () => {
    if (failure === null && out.writableNeedDrain) {
      // The listeners of the one that did not come go too: a large shop has thousands of pieces.
      const settled = new AbortController();
      const { signal } = settled;
      await Promise.race([once(out, "drain", { signal }), once(out, "close", { signal })]).finally(() => settled.abort());
    }
    if (failure !== null) throw failure;
  };
  const add = async (name: string, pieces: AsyncIterable<Uint8Array>, squeeze: "deflate" | "store"): Promise<ZipEntry> => {
    const entry = squeeze === "store" ? new ZipPassThrough(name) : new ZipDeflate(name, { level: 6 });
    const hash = createHash("sha256");
    let bytes = 0;
    zip.add(entry);
    for await (const piece of pieces) {
      hash.update(piece);
      bytes += piece.length;
      entry.push(piece.slice());
      await flowing();
    }
    entry.push(new Uint8Array(0), true);
    await flowing();
    return { name, bytes, sha256: hash.digest("hex") };
  };
  return {
    add,
    addFile: (name, from, squeeze) => add(name, createReadStream(from), squeeze),
    addText: (name, text) => add(name, one(new TextEncoder().encode(text)), "deflate"),
    async end() {
      zip.end();
      await new Promise<void>((resolve, reject) => {
        if (failure !== null) reject(failure);
        out.on("error", reject);
        out.end(() => resolve());
      });
      const file = await open(path, "r+");
      await file.sync().finally(() => file.close());
    },
    abandon: () => out.destroy(),
  };
}

async function* one(piece: Uint8Array): AsyncGenerator<Uint8Array> {
  yield piece;
}

/** Takes the pieces of one file of a zip; `null` is its end. */
export type Taker = (piece: Uint8Array | null) => void;

/**
 * Reads a zip through once, from its beginning.
 *
 * @param take says what to do with each file in it
 * @throws Error where it is no zip or its data are damaged
 */
export async function readZip(path: string, take: (name: string) => Taker): Promise<void> {
  await mustEnd(path);
  let failure: Error | null = null;
  const unzip = new Unzip((file) => {
    const taker = take(file.name);
    file.ondata = (error, piece, isLast) => {
      if (error !== null) failure = error;
      else {
        taker(piece);
        if (isLast) taker(null);
      }
    };
    file.start();
  });
  unzip.register(UnzipInflate);
  unzip.register(UnzipPassThrough);
  for await (const piece of createReadStream(path)) {
    unzip.push(piece as Uint8Array);
    if (failure !== null) throw failure;
  }
  unzip.push(new Uint8Array(0), true);
  if (failure !== null) throw failure;
}

/** The record that a zip without a comment ends with, and its size (APPNOTE, 4.3.16). */
const END = Buffer.from("PK\x05\x06", "latin1");
const END_SIZE = 22;

/** A zip that was cut short lacks its end, though all that is read of it may be there. */
async function mustEnd(path: string): Promise<void> {
  const file = await open(path, "r");
  try {
    const { size } = await file.stat();
    const { buffer } = await file.read(Buffer.alloc(END.length), 0, END.length, Math.max(0, size - END_SIZE));
    if (!buffer.equals(END)) throw new Error(`${path} was cut short, or is no zip`);
  } finally {
    await file.close();
  }
}
