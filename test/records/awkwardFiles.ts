import { deflateSync } from "node:zlib";
import { strToU8, zipSync } from "fflate";
import { pngChunk } from "./pictures.ts";

/*
 * Files whose bytes look like pieces of a zip: what stands in APPNOTE 6.3.10 as the signatures of its records (4.3.7, 4.3.9.3, 4.3.12).
 */

const SIGNATURES = ["PK\x01\x02", "PK\x03\x04", "PK\x07\x08"] as const;

/** A grey picture one pixel high, valid, whose pixels are these bytes as they are. */
export function pictureHolding(bytes: Uint8Array): Buffer {
  const header = Buffer.from([0, 0, 0, 0, 0, 0, 0, 1, 8, 0, 0, 0, 0]);
  header.writeUInt32BE(bytes.length, 0);
  return Buffer.concat([
    Buffer.from("\x89PNG\r\n\x1a\n", "latin1"),
    pngChunk("IHDR", header),
    // Level 0 stores: the bytes stand in the file as they are.
    pngChunk("IDAT", deflateSync(Buffer.concat([Buffer.from([0]), bytes]), { level: 0 })),
    pngChunk("IEND", Buffer.alloc(0)),
  ]);
}

/** One picture for each signature, and one with all of them. */
export const AWKWARD_PICTURES: readonly Buffer[] = [...SIGNATURES, SIGNATURES.join("between")].map((words) =>
  pictureHolding(Buffer.from(`${words}and more pixels after it`, "latin1")),
);

/** As an X3P is one (ISO 25178-72): a zip with a description and a matrix of numbers, stored. */
export const ZIP_IN_ITSELF: Buffer = Buffer.from(
  zipSync(
    {
      "main.xml": strToU8("<p:ISO5436_2>invented for a test</p:ISO5436_2>"),
      "bindata/data.bin": Uint8Array.from({ length: 4000 }, (_, i) => (i * 37) % 251),
    },
    { level: 0, mtime: new Date("2026-05-31T12:00:00") },
  ),
);
