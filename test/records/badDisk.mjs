/*
 * Preloaded (`--import`) into a program: a disk that stores one bit of every backup otherwise than it was told. Reading it back is what finds that, so it has to
 * happen between the last byte and the reading, every time.
 */
import fs from "node:fs";
import { syncBuiltinESMExports } from "node:module";

/** So far from the end lies a stored photo of the test's: in squeezed data a changed bit can come out the same (one copy of nothing for another). */
const FROM_END = 30_000;

const { close, createWriteStream } = fs;
fs.createWriteStream = (path, options) =>
  createWriteStream(path, {
    ...options,
    fs: {
      ...fs,
      close(file, done) {
        if (String(path).endsWith(".zip.making")) flip(path);
        close(file, done);
      },
    },
  });
syncBuiltinESMExports();

function flip(path) {
  const file = fs.openSync(path, "r+");
  const at = fs.fstatSync(file).size - FROM_END;
  const byte = Buffer.alloc(1);
  fs.readSync(file, byte, 0, 1, at);
  byte[0] ^= 1;
  fs.writeSync(file, byte, 0, 1, at);
  fs.closeSync(file);
}
