import { crc32, deflateSync } from "node:zlib";

/*
 * The smallest pictures, put together by hand after their specifications.
 */

/** A chunk of a PNG: length, name, data, checksum. */
export function pngChunk(name: string, data: Uint8Array): Buffer {
  const body = Buffer.concat([Buffer.from(name, "latin1"), data]);
  const around = Buffer.alloc(8);
  around.writeUInt32BE(data.length, 0);
  around.writeUInt32BE(crc32(body), 4);
  return Buffer.concat([around.subarray(0, 4), body, around.subarray(4)]);
}

export function png(...extra: readonly Buffer[]): Buffer {
  const header = Buffer.from([0, 0, 0, 1, 0, 0, 0, 1, 8, 0, 0, 0, 0]);
  return Buffer.concat([
    Buffer.from("\x89PNG\r\n\x1a\n", "latin1"),
    pngChunk("IHDR", header),
    ...extra,
    pngChunk("IDAT", deflateSync(Buffer.from([0, 128]))),
    pngChunk("IEND", Buffer.alloc(0)),
  ]);
}

/** One grey pixel. */
export const PNG = png();
