/*
 * Preloaded (`--import`) into a program: a disk that stores one bit of every backup otherwise than it was told. Reading it back is what finds that, so it has to
 * happen between the last byte and the reading, every time.
 */
import fs from "node:fs";
import { syncBuiltinESMExports } from "node:module";

/** Within the first entry of the zip, the database. */
const AT = 1000;

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
  const byte = Buffer.alloc(1);
  fs.readSync(file, byte, 0, 1, AT);
  byte[0] ^= 1;
  fs.writeSync(file, byte, 0, 1, AT);
  fs.closeSync(file);
}
