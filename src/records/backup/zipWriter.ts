import { createHash } from "node:crypto";
import { once } from "node:events";
import { createReadStream } from "node:fs";
import { Readable, type Writable } from "node:stream";
import { pipeline } from "node:stream/promises";
import { ZipFile } from "yazl";

/** What a manifest says of a file. */
export interface FileSum {
  readonly name: string;
  readonly bytes: number;
  readonly sha256: string;
}

/** Pictures do not get smaller, tables do. The least effort already halves a database several times over; more of it only takes time. */
const LEVELS = { deflate: 1, store: 0 } as const;
const READ_AT_ONCE = 1_000_000;

/** A zip being written piece by piece: no file of it is ever whole in memory. */
export interface ZipWriter {
  addFile(name: string, path: string, squeeze: keyof typeof LEVELS): Promise<FileSum>;
  add(name: string, pieces: AsyncIterable<Uint8Array>, squeeze: keyof typeof LEVELS): Promise<FileSum>;
  addText(name: string, text: string): Promise<FileSum>;
  /** Ends the zip, and the stream it is written into. */
  end(): Promise<void>;
}

/**
 * @param at time of the files in it
 * @throws whatever the stream fails with, from the call that is under way
 */
export function zipWriter(out: Writable, at: Date): ZipWriter {
  const zip = new ZipFile();
  const failed = once(zip, "error").then(([error]) => Promise.reject(error));
  const written = pipeline(zip.outputStream, out);
  for (const outcome of [failed, written]) outcome.catch(() => {});
  const add = async (name: string, pieces: AsyncIterable<Uint8Array>, squeeze: keyof typeof LEVELS): Promise<FileSum> => {
    const { promise, resolve, reject } = settled<FileSum>();
    const stream = Readable.from(summed(name, pieces, resolve), { objectMode: false });
    // The library does not listen for it.
    stream.on("error", reject);
    zip.addReadStream(stream, name, { mtime: at, compressionLevel: LEVELS[squeeze] });
    return Promise.race([promise, failed, written.then(() => promise)]);
  };
  return {
    add,
    addFile: (name, path, squeeze) => add(name, piecesOf(path), squeeze),
    addText: (name, text) => add(name, one(new TextEncoder().encode(text)), "deflate"),
    async end() {
      zip.end();
      await Promise.race([written, failed]);
    },
  };
}

async function* summed(name: string, pieces: AsyncIterable<Uint8Array>, tell: (sum: FileSum) => void): AsyncGenerator<Uint8Array> {
  const hash = createHash("sha256");
  let bytes = 0;
  for await (const piece of pieces) {
    hash.update(piece);
    bytes += piece.length;
    yield piece;
  }
  tell({ name, bytes, sha256: hash.digest("hex") });
}

/** The bytes of a file. It is opened when the first is wanted: a stream that fails before anybody listens would end the program. */
export async function* piecesOf(path: string): AsyncGenerator<Uint8Array> {
  yield* createReadStream(path, { highWaterMark: READ_AT_ONCE });
}

async function* one(piece: Uint8Array): AsyncGenerator<Uint8Array> {
  yield piece;
}

function settled<Answer>() {
  let resolve: (answer: Answer) => void = () => {};
  let reject: (reason: unknown) => void = () => {};
  const promise = new Promise<Answer>((right, wrong) => {
    resolve = right;
    reject = wrong;
  });
  return { promise, resolve, reject };
}
