import { describe, expect, it } from "vitest";
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
  const profile = segment(0xe2, latin("ICC_PROFILE\0\x01\x01 colours"));

  it("keeps tables, scan and colours; Exif, XMP, comments, makers' data and what hangs on behind go", () => {
    const given = Buffer.concat([SOI, JFIF, exif(1), xmp, profile, comment, maker, TABLE, SCAN, SCAN, EOI, latin("a film, secret")]);
    const { type, bytes } = photoOf(given);
    expect(type).toBe("image/jpeg");
    expect(Buffer.from(bytes)).toEqual(Buffer.concat([SOI, JFIF, profile, TABLE, SCAN, SCAN, EOI]));
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
    const colours = chunk("ICCP", latin("colours"));
    const given = webp(header(0b0010_1100), colours, picture, chunk("EXIF", latin("secret")), chunk("XMP ", latin("secret")));
    const { type, bytes } = photoOf(Buffer.concat([given, latin("behind")]));
    expect(type).toBe("image/webp");
    expect(Buffer.from(bytes)).toEqual(webp(header(0b0010_0000), colours, picture));
  });

  it("that is cut short is refused", () => {
    expect(() => photoOf(webp(picture).subarray(0, 18))).toThrow(/refused/);
  });
});
