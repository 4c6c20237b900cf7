import { crc32, deflateSync, inflateSync } from "node:zlib";
import { describe, expect, it } from "vitest";
import { plainProfile } from "#records/photos/icc";
import { photoOf } from "#records/photos/photoBytes";

/*
 * Skeletons of pictures put together after their specifications: what is tested is which pieces stay.
 */

const latin = (text: string) => Buffer.from(text, "latin1");

function segment(marker: number, body: Buffer): Buffer {
  const head = Buffer.from([0xff, marker, 0, 0]);
  head.writeUInt16BE(body.length + 2, 2);
  return Buffer.concat([head, body]);
}

/** A display profile after ICC.1:2022, version 2: matrix and curves, a name, a note of a program's own. */
function iccProfile(name: string): Buffer {
  const xyz = Buffer.concat([latin("XYZ \0\0\0\0"), Buffer.from("00006fa2000038f500000390", "hex")]);
  const curve = latin("curv\0\0\0\0\0\0\0\x01\x02\x33");
  const elements: [string, Buffer][] = [
    ["desc", latin(`desc\0\0\0\0${name}`)],
    ["note", latin(`text\0\0\0\0${name}`)],
    ...["rXYZ", "gXYZ", "bXYZ", "wtpt"].map((tag): [string, Buffer] => [tag, xyz]),
    ...["rTRC", "gTRC", "bTRC"].map((tag): [string, Buffer] => [tag, Buffer.concat([curve, latin(`\0\0${name}`)])]),
  ];
  const header = Buffer.alloc(128);
  header.set([2, 0x10], 8);
  header.write("mntrRGB XYZ ", 12, "latin1");
  header.write("\x07\xea\0\x05\0\x1f", 24, "latin1");
  header.write("acsp", 36, "latin1");
  header.write(name, 84, "latin1");
  const table = Buffer.alloc(4 + 12 * elements.length);
  table.writeUInt32BE(elements.length, 0);
  let at = header.length + table.length;
  for (const [i, [tag, element]] of elements.entries()) {
    table.write(tag, 4 + 12 * i, "latin1");
    table.writeUInt32BE(at, 8 + 12 * i);
    table.writeUInt32BE(element.length, 12 + 12 * i);
    at += element.length;
  }
  header.writeUInt32BE(at, 0);
  return Buffer.concat([header, table, ...elements.map(([, element]) => element)]);
}

const PLAIN_PROFILE = Buffer.from(plainProfile(iccProfile("x")) ?? []);

describe("a colour profile", () => {
  it("keeps matrix, curves and white, each as long as its numbers, and names nobody", () => {
    const plain = Buffer.from(plainProfile(iccProfile("Hedda Plover")) ?? []);
    expect(plain.includes("Hedda")).toBe(false);
    expect(plain).toEqual(PLAIN_PROFILE);
    const tags = Array.from({ length: plain.readUInt32BE(128) }, (_, i) => plain.toString("latin1", 132 + 12 * i, 136 + 12 * i));
    expect(tags).toEqual(["desc", "cprt", "rXYZ", "gXYZ", "bXYZ", "rTRC", "gTRC", "bTRC", "wtpt"]);
    expect(plain.readUInt32BE(0)).toBe(plain.length);
    expect(plain.includes(Buffer.from("00006fa2000038f500000390", "hex"))).toBe(true);
  });

  it("once cleaned stays as it is", () => {
    expect(Buffer.from(plainProfile(PLAIN_PROFILE) ?? [])).toEqual(PLAIN_PROFILE);
  });

  it.each([
    ["cut short", iccProfile("x").subarray(0, 200)],
    ["without curves", Buffer.from(iccProfile("x").toString("latin1").replace("rTRC", "rTRX"), "latin1")],
    ["with more tags than bytes", Buffer.concat([iccProfile("x").subarray(0, 128), Buffer.from([255, 255, 255, 255])])],
  ])("%s is left out", (_, bytes) => {
    expect(plainProfile(bytes)).toBeNull();
  });
});

const SOI = Buffer.from([0xff, 0xd8]);
const EOI = Buffer.from([0xff, 0xd9]);
const JFIF = segment(0xe0, latin("JFIF\0\x01\x02\0\0\x01\0\x01\0\0"));
const TABLE = segment(0xdb, Buffer.alloc(65, 3));
// Coded data with a stuffed zero and a restart marker, which do not end them.
const SCAN = Buffer.concat([segment(0xda, latin("\x01\x01\0\0\x3f\0")), Buffer.from([1, 2, 0xff, 0, 3, 0xff, 0xd0, 4, 5])]);

/** Exif of one entry, the orientation, in the byte order of Intel; behind it what a camera would add. */
function exif(orientation: number): Buffer {
  const tiff = Buffer.alloc(26);
  tiff.write("II", 0, "latin1");
  tiff.writeUInt16LE(42, 2);
  tiff.writeUInt32LE(8, 4);
  tiff.writeUInt16LE(1, 8);
  tiff.writeUInt16LE(0x0112, 10);
  tiff.writeUInt16LE(3, 12);
  tiff.writeUInt32LE(1, 14);
  tiff.writeUInt16LE(orientation, 18);
  return segment(0xe1, Buffer.concat([latin("Exif\0\0"), tiff, latin("GPS 47.1 N, made by a camera")]));
}

describe("a JPEG", () => {
  const xmp = segment(0xe1, latin("http://ns.adobe.com/xap/1.0/\0<secret/>"));
  const comment = segment(0xfe, latin("secret"));
  const maker = segment(0xed, latin("Photoshop 3.0\0 secret"));
  const inChunks = (bytes: Buffer, count: number) =>
    Array.from({ length: count }, (_, i) => {
      const part = bytes.subarray(Math.floor((i * bytes.length) / count), Math.floor(((i + 1) * bytes.length) / count));
      return segment(0xe2, Buffer.concat([latin("ICC_PROFILE\0"), Buffer.from([i + 1, count]), part]));
    });
  const profile = inChunks(PLAIN_PROFILE, 1)[0];

  it("keeps tables, scan and colours; Exif, XMP, comments, makers' data and what hangs on behind go", () => {
    const given = Buffer.concat([SOI, JFIF, exif(1), xmp, profile, comment, maker, TABLE, SCAN, SCAN, EOI, latin("a film, secret")]);
    const { type, bytes } = photoOf(given);
    expect(type).toBe("image/jpeg");
    expect(Buffer.from(bytes)).toEqual(Buffer.concat([SOI, JFIF, profile, TABLE, SCAN, SCAN, EOI]));
  });

  it.each([1, 2])("keeps of a colour profile in %i pieces the colours, not whose it is", (count) => {
    const given = Buffer.concat([SOI, JFIF, ...inChunks(iccProfile("Hedda's camera"), count).reverse(), TABLE, SCAN, EOI]);
    expect(Buffer.from(photoOf(given).bytes)).toEqual(Buffer.concat([SOI, JFIF, profile, TABLE, SCAN, EOI]));
  });

  it.each([
    ["a segment for extensions", segment(0xf3, latin("secret"))],
    ["a reserved segment", segment(0x02, latin("secret"))],
    ["Adobe's transform with a tail", segment(0xee, latin("Adobe\0\x64\0\0\0\0\0secret"))],
    ["a profile that is none", segment(0xe2, latin("ICC_PROFILE\0\x01\x01secret"))],
  ])("does not keep %s", (_, hiding) => {
    const given = Buffer.concat([SOI, JFIF, hiding, TABLE, SCAN, EOI]);
    expect(Buffer.from(photoOf(given).bytes)).toEqual(Buffer.concat([SOI, JFIF, TABLE, SCAN, EOI]));
  });

  it.each([
    ["a table", segment(0xdb, Buffer.concat([Buffer.alloc(65, 3), latin("secret")]))],
    ["a table of codes", segment(0xc4, Buffer.concat([Buffer.alloc(17), latin("secret")]))],
    ["a restart interval", segment(0xdd, latin("\0\0secret"))],
    ["a frame", segment(0xc0, latin("\x08\0\x08\0\x08\x01\x01\x11\0secret"))],
  ])("with %s that is longer than it says is refused", (_, hiding) => {
    expect(() => photoOf(Buffer.concat([SOI, JFIF, hiding, TABLE, SCAN, EOI]))).toThrow(/refused/);
  });

  it.each([3, 6, 8])("that is to be turned (%i) still says so, and no more", (orientation) => {
    const { bytes } = photoOf(Buffer.concat([SOI, exif(orientation), TABLE, SCAN, EOI]));
    expect(Buffer.from(bytes).includes("GPS")).toBe(false);
    const tag = Buffer.from(bytes).indexOf(Buffer.from([0x01, 0x12, 0, 3, 0, 0, 0, 1]));
    expect(bytes[tag + 9]).toBe(orientation);
    // Reads as Exif again.
    expect(Buffer.from(photoOf(bytes).bytes)).toEqual(Buffer.from(bytes));
  });

  it.each([
    ["that is cut short", Buffer.concat([SOI, JFIF, TABLE, SCAN])],
    ["without a picture", Buffer.concat([SOI, JFIF, EOI])],
    ["with a segment that is longer than the file", Buffer.concat([SOI, Buffer.from([0xff, 0xdb, 0xff, 0xff, 1])])],
  ])("%s is refused", (_, bytes) => {
    expect(() => photoOf(bytes)).toThrow(/refused/);
  });
});

describe("a WebP", () => {
  function chunk(name: string, body: Buffer): Buffer {
    const head = Buffer.concat([latin(name), Buffer.alloc(4)]);
    head.writeUInt32LE(body.length, 4);
    return Buffer.concat([head, body, Buffer.alloc(body.length % 2)]);
  }
  function webp(...chunks: Buffer[]): Buffer {
    const body = Buffer.concat([latin("WEBP"), ...chunks]);
    const head = Buffer.concat([latin("RIFF"), Buffer.alloc(4)]);
    head.writeUInt32LE(body.length, 4);
    return Buffer.concat([head, body]);
  }
  const picture = chunk("VP8L", Buffer.from([0x2f, 0, 0, 0, 0]));

  it("keeps the picture and its colours; Exif and XMP go, and the header says so", () => {
    const header = (flags: number) => chunk("VP8X", Buffer.from([flags, 0, 0, 0, 0, 0, 0, 0, 0, 0]));
    const colours = chunk("ICCP", PLAIN_PROFILE);
    const given = webp(
      header(0b0010_1100),
      chunk("ICCP", iccProfile("Hedda's camera")),
      picture,
      chunk("EXIF", latin("secret")),
      chunk("XMP ", latin("secret")),
    );
    const { type, bytes } = photoOf(Buffer.concat([given, latin("behind")]));
    expect(type).toBe("image/webp");
    expect(Buffer.from(bytes)).toEqual(webp(header(0b0010_0000), colours, picture));
  });

  it("without a profile that can be kept does not claim one", () => {
    const header = (flags: number) => chunk("VP8X", Buffer.from([flags, 0, 0, 0, 0, 0, 0, 0, 0, 0]));
    const { bytes } = photoOf(webp(header(0b0010_0000), chunk("ICCP", latin("secret")), picture));
    expect(Buffer.from(bytes)).toEqual(webp(header(0), picture));
  });

  it("that is cut short is refused", () => {
    expect(() => photoOf(webp(picture).subarray(0, 18))).toThrow(/refused/);
  });
});

describe("a PNG", () => {
  function chunk(name: string, body: Buffer): Buffer {
    const head = Buffer.alloc(4);
    head.writeUInt32BE(body.length);
    const tail = Buffer.alloc(4);
    tail.writeUInt32BE(crc32(Buffer.concat([latin(name), body])));
    return Buffer.concat([head, latin(name), body, tail]);
  }
  const png = (...chunks: Buffer[]) => Buffer.concat([latin("\x89PNG\r\n\x1a\n"), ...chunks]);
  const [begin, data, end] = [chunk("IHDR", Buffer.alloc(13, 1)), chunk("IDAT", Buffer.from([1])), chunk("IEND", Buffer.alloc(0))];
  const profile = (name: string, bytes: Buffer) => chunk("iCCP", Buffer.concat([latin(`${name}\0\0`), deflateSync(bytes)]));

  it("keeps of a colour profile the colours, not whose it is", () => {
    const given = png(begin, profile("Hedda's camera", iccProfile("Hedda's camera")), data, end);
    const { bytes } = photoOf(given);
    const kept = Buffer.from(bytes);
    expect(kept.includes("Hedda")).toBe(false);
    const at = kept.indexOf("iCCP");
    const length = kept.readUInt32BE(at - 4);
    const body = kept.subarray(at + 4, at + 4 + length);
    expect(inflateSync(body.subarray(body.indexOf(0) + 2))).toEqual(PLAIN_PROFILE);
    expect(kept.readUInt32BE(at + 4 + length)).toBe(crc32(kept.subarray(at, at + 4 + length)));
  });

  it.each([
    ["that is none", profile("x", latin("secret"))],
    ["that is not packed", chunk("iCCP", latin("x\0\0secret"))],
    ["that unpacks without end", profile("x", Buffer.alloc(30_000_000))],
  ])("leaves out a profile %s", (_, hiding) => {
    expect(Buffer.from(photoOf(png(begin, hiding, data, end)).bytes)).toEqual(png(begin, data, end));
  });
});
