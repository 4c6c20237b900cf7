import { type Entry, openPromise } from "yauzl";

/** Takes the bytes of a file, piece by piece. */
export type Take = (piece: Uint8Array) => void;

/** A zip whose list of files has been read; files are read in whatever order. */
export interface ZipReader {
  readonly names: readonly string[];
  /** Its bytes. @throws Error while it is read, where there is no such file, or its data are damaged */
  pieces(name: string): AsyncIterable<Uint8Array>;
  /** @throws Error where there is no such file, or its data are damaged */
  read(name: string, take: Take): Promise<void>;
  close(): void;
}

/**
 * Reads a zip by the list at its end (the central directory; APPNOTE 6.3.10, 4.3.12 and for ZIP64 4.3.14): where each file lies and how long it is.
 * Reading from the beginning would have to look for signatures in the bytes of the files, and a picture may hold them.
 *
 * @throws Error where it is no zip, was cut short, or names a file twice
 */
export async function openZip(path: string): Promise<ZipReader> {
  const zip = await openPromise(path, { autoClose: false, strictFileNames: true });
  // What goes wrong is told by the call that is under way.
  zip.on("error", () => {});
  const entries = new Map<string, Entry>();
  try {
    for await (const entry of zip.eachEntry()) {
      if (entries.has(entry.fileName)) throw new Error(`${entry.fileName} is in it twice`);
      entries.set(entry.fileName, entry);
    }
  } catch (error) {
    zip.close();
    throw error;
  }
  async function* pieces(name: string): AsyncGenerator<Uint8Array> {
    const entry = entries.get(name);
    if (entry === undefined) throw new Error(`${name} is not in it`);
    yield* await zip.openReadStreamPromise(entry);
  }
  return {
    names: [...entries.keys()],
    pieces,
    async read(name, take) {
      for await (const piece of pieces(name)) take(piece);
    },
    close: () => zip.close(),
  };
}
