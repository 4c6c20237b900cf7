import { createHash } from "node:crypto";
import { createWriteStream, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { open } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { Writable } from "node:stream";
import { crc32 } from "node:zlib";
import { afterAll, describe, expect, it } from "vitest";
import { openZip } from "#records/backup/zipReader";
import { zipWriter } from "#records/backup/zipWriter";

/* Zips beyond 4 GiB and beyond 65 535 files (ZIP64: APPNOTE 6.3.10, 4.3.14, 4.3.15, 4.5.3). */

const folder = mkdtempSync(join(tmpdir(), "gritwright-zip-"));
afterAll(() => rmSync(folder, { recursive: true }));

const GIB = 2 ** 30;
const AT = new Date("2026-05-31T18:00:00Z");

/** The bytes of a file in a zip, as text. */
async function textIn(path: string, name: string): Promise<string> {
  const zip = await openZip(path);
  const pieces: Uint8Array[] = [];
  await zip.read(name, (piece) => pieces.push(piece));
  zip.close();
  return Buffer.concat(pieces).toString("latin1");
}

/** A stored file's local header, name and bytes (APPNOTE 4.3.7). */
function localFile(name: string, text: string): Buffer {
  const header = Buffer.alloc(30);
  header.writeUInt32LE(0x04034b50, 0);
  header.writeUInt16LE(45, 4);
  header.writeUInt32LE(crc32(text), 14);
  header.writeUInt32LE(text.length, 18);
  header.writeUInt32LE(text.length, 22);
  header.writeUInt16LE(name.length, 26);
  return Buffer.concat([header, Buffer.from(name + text, "latin1")]);
}

/** Its line in the list at the end, with the place in an extra field of ZIP64 (4.3.12, 4.5.3). */
function listed(name: string, text: string, at: number): Buffer {
  const header = Buffer.alloc(46);
  header.writeUInt32LE(0x02014b50, 0);
  header.writeUInt16LE(45, 4);
  header.writeUInt16LE(45, 6);
  header.writeUInt32LE(crc32(text), 16);
  header.writeUInt32LE(text.length, 20);
  header.writeUInt32LE(text.length, 24);
  header.writeUInt16LE(name.length, 28);
  header.writeUInt16LE(12, 30);
  header.writeUInt32LE(0xffffffff, 42);
  const extra = Buffer.alloc(12);
  extra.writeUInt16LE(1, 0);
  extra.writeUInt16LE(8, 2);
  extra.writeBigUInt64LE(BigInt(at), 4);
  return Buffer.concat([header, Buffer.from(name, "latin1"), extra]);
}

/** The end of a zip whose list lies where 32 bits do not reach (4.3.14 to 4.3.16). */
function endOf(list: Buffer, at: number, count: number): Buffer {
  const record = Buffer.alloc(56);
  record.writeUInt32LE(0x06064b50, 0);
  record.writeBigUInt64LE(44n, 4);
  record.writeBigUInt64LE(BigInt(count), 24);
  record.writeBigUInt64LE(BigInt(count), 32);
  record.writeBigUInt64LE(BigInt(list.length), 40);
  record.writeBigUInt64LE(BigInt(at), 48);
  const locator = Buffer.alloc(20);
  locator.writeUInt32LE(0x07064b50, 0);
  locator.writeBigUInt64LE(BigInt(at + list.length), 8);
  locator.writeUInt32LE(1, 16);
  const end = Buffer.alloc(22, 0xff);
  end.writeUInt32LE(0x06054b50, 0);
  end.writeUInt32LE(0, 4);
  end.writeUInt16LE(0, 20);
  return Buffer.concat([record, locator, end]);
}

describe("a zip", () => {
  it("whose files lie beyond 4 GiB is read; the hole between them takes no room on the disk", async () => {
    const path = join(folder, "far.zip");
    const [near, far] = [0, 5 * GIB];
    const file = await open(path, "w");
    await file.write(localFile("near", "first"), 0, null, near);
    await file.write(localFile("far", "PK\x03\x04 second"), 0, null, far);
    const list = Buffer.concat([listed("near", "first", near), listed("far", "PK\x03\x04 second", far)]);
    const at = 6 * GIB;
    await file.write(Buffer.concat([list, endOf(list, at, 2)]), 0, null, at);
    await file.close();
    expect([await textIn(path, "near"), await textIn(path, "far")]).toEqual(["first", "PK\x03\x04 second"]);
  });

  it("of more than 65 535 files is read", async () => {
    const path = join(folder, "many.zip");
    const names = Array.from({ length: 66_000 }, (_, i) => `photos/${i}`);
    const files = names.map((name) => localFile(name, name));
    let at = 0;
    const list = files.map((file, i) => {
      const line = listed(names[i], names[i], at);
      at += file.length;
      return line;
    });
    writeFileSync(path, Buffer.concat([...files, ...list, endOf(Buffer.concat(list), at, names.length)]));
    const reader = await openZip(path);
    expect(reader.names).toEqual(names);
    reader.close();
    expect([await textIn(path, "photos/0"), await textIn(path, "photos/65999")]).toEqual(["photos/0", "photos/65999"]);
  });

  it("tells size and checksum of what it was given", async () => {
    const path = join(folder, "one.zip");
    const zip = zipWriter(createWriteStream(path), AT);
    const text = "PK\x07\x08".repeat(1000);
    expect(await zip.addText("text", text)).toEqual({ name: "text", bytes: 4000, sha256: createHash("sha256").update(text).digest("hex") });
    await zip.end();
    expect(await textIn(path, "text")).toBe(text);
  });

  it("that cannot be written fails where it is written, and nothing waits for ever", async () => {
    const full = new Writable({
      highWaterMark: 100,
      write: (_chunk, _encoding, done) => done(Object.assign(new Error("no room"), { code: "ENOSPC" })),
    });
    const zip = zipWriter(full, AT);
    await expect(
      (async () => {
        for (let i = 0; i < 100; i += 1) await zip.addText(`file ${i}`, "x".repeat(100_000));
        await zip.end();
      })(),
    ).rejects.toThrow("no room");
    const gone = zipWriter(createWriteStream(join(folder, "gone.zip")), AT);
    await expect(gone.addFile("nothing", join(folder, "not there"), "store")).rejects.toThrow("ENOENT");
  });

  it("that names a file twice, or is none, is refused", async () => {
    const path = join(folder, "twice.zip");
    const list = Buffer.concat([listed("near", "first", 0), listed("near", "first", 0)]);
    const local = localFile("near", "first");
    writeFileSync(path, Buffer.concat([local, list, endOf(list, local.length, 2)]));
    await expect(openZip(path)).rejects.toThrow("near is in it twice");
    writeFileSync(path, "no zip at all");
    await expect(openZip(path)).rejects.toThrow();
  });
});
