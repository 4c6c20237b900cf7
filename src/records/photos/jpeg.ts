import { plainProfile } from "./icc.ts";
import { joined, latinOf, viewOf } from "./joined.ts";

/*
 * Markers of ISO/IEC 10918-1, table B.1; the Exif attribute for turning is TIFF tag 0x0112 (CIPA DC-008).
 */
const SOI = 0xd8;
const EOI = 0xd9;
const SOS = 0xda;
const APP0 = 0xe0;
const APP1 = 0xe1;
const APP2 = 0xe2;
const APP14 = 0xee;
const [DHT, DAC, DQT, DNL, DRI] = [0xc4, 0xcc, 0xdb, 0xdc, 0xdd];
/** Of a frame: with DHT and DAC among their numbers, and C8, which is kept for extensions. */
const [FIRST_FRAME, LAST_FRAME, RESERVED_FRAME] = [0xc0, 0xcf, 0xc8];
const PROFILE_MARK = "ICC_PROFILE\0";
/** Marker, length, mark, number of the piece and of all pieces. */
const PROFILE_HEAD = 18;
const MOST_SEGMENT = 65_533;
const ORIENTATION = 0x0112;

/** The picture without what a camera wrote beside it; null where it is not a whole JPEG. */
export function strippedJpeg(bytes: Uint8Array): Uint8Array | null {
  const view = viewOf(bytes);
  const kept: Uint8Array[] = [bytes.subarray(0, 2)];
  const profile = { pieces: new Map<number, Uint8Array>(), at: 0 };
  let orientation = 1;
  let hasScan = false;
  for (let at = 2; at + 1 < bytes.length; ) {
    const marker = bytes[at + 1];
    if (bytes[at] !== 0xff || marker === SOI) return null;
    // Any number of fill bytes may stand before a marker.
    if (marker === 0xff) {
      at += 1;
      continue;
    }
    if (marker === EOI) {
      kept.splice(profile.at, 0, ...profileSegment(profile.pieces));
      return hasScan ? joined([kept[0], ...turned(orientation), ...kept.slice(1), bytes.subarray(at, at + 2)]) : null;
    }
    if (at + 4 > bytes.length) return null;
    const end = at + 2 + view.getUint16(at + 2);
    if (end > bytes.length || end < at + 4) return null;
    const segment = bytes.subarray(at, end);
    if (marker === APP1) orientation = orientationOf(segment) ?? orientation;
    if (marker === APP2 && latinOf(segment.subarray(4, 16)) === PROFILE_MARK) {
      if (profile.pieces.size === 0) profile.at = kept.length;
      profile.pieces.set(segment[16], segment.subarray(PROFILE_HEAD));
    } else if (isPicture(marker, segment)) {
      if (!isAsLongAsItSays(marker, segment)) return null;
      kept.push(segment);
    }
    at = end;
    if (marker !== SOS) continue;
    hasScan = true;
    at = endOfScan(bytes, end);
    kept.push(bytes.subarray(end, at));
  }
  return null;
}

/**
 * What decodes the picture, and of what programs may add JFIF and Adobe's transform, each as long as it is by itself; the colour profile is made anew. All
 * other markers, also those that are reserved or kept for extensions, go.
 */
function isPicture(marker: number, segment: Uint8Array): boolean {
  // JFIF proper, without the small picture that may hang on it.
  if (marker === APP0) return latinOf(segment.subarray(4, 8)) === "JFIF" && segment.length === 18;
  if (marker === APP14) return latinOf(segment.subarray(4, 9)) === "Adobe" && segment.length === 16;
  if (marker >= FIRST_FRAME && marker <= LAST_FRAME) return marker !== RESERVED_FRAME;
  return [SOS, DQT, DNL, DRI].includes(marker);
}

/** Behind what a decoder reads of a segment there is room for words (lengths of B.2.2 to B.2.5). */
function isAsLongAsItSays(marker: number, segment: Uint8Array): boolean {
  const body = segment.subarray(4);
  if (marker === APP0 || marker === APP14) return true;
  if (marker === DQT) return isWhole(body, (at) => 1 + (body[at] >> 4 === 0 ? 64 : 128));
  if (marker === DHT) return isWhole(body, (at) => 17 + body.subarray(at + 1, at + 17).reduce((sum, count) => sum + count, 0));
  if (marker === DAC) return body.length % 2 === 0;
  if (marker === DRI || marker === DNL) return body.length === 2;
  return marker === SOS ? body.length === 4 + 2 * body[0] : body.length === 6 + 3 * body[5];
}

/** Whether tables one behind the other fill it. */
function isWhole(body: Uint8Array, lengthAt: (at: number) => number): boolean {
  let at = 0;
  while (at < body.length) at += lengthAt(at);
  return at === body.length;
}

function profileSegment(pieces: ReadonlyMap<number, Uint8Array>): Uint8Array[] {
  const inOrder = [...pieces].sort(([one], [other]) => one - other).map(([, piece]) => piece);
  const plain = plainProfile(joined(inOrder));
  if (plain === null || plain.length + PROFILE_HEAD > MOST_SEGMENT) return [];
  const head = new Uint8Array(PROFILE_HEAD);
  const view = viewOf(head);
  view.setUint16(0, 0xff00 | APP2);
  view.setUint16(2, PROFILE_HEAD - 2 + plain.length);
  head.set(
    [...PROFILE_MARK].map((letter) => letter.charCodeAt(0)),
    4,
  );
  head.set([1, 1], 16);
  return [joined([head, plain])];
}

/** Coded data end at the first marker that is neither a stuffed zero nor a restart. */
function endOfScan(bytes: Uint8Array, start: number): number {
  for (let at = start; at + 1 < bytes.length; at += 1) {
    if (bytes[at] !== 0xff) continue;
    const next = bytes[at + 1];
    if (next !== 0 && next !== 0xff && (next < 0xd0 || next > 0xd7)) return at;
  }
  return bytes.length;
}

function orientationOf(segment: Uint8Array): number | null {
  if (latinOf(segment.subarray(4, 10)) !== "Exif\0\0" || segment.length < 18) return null;
  const tiff = viewOf(segment.subarray(10));
  const isLittle = tiff.getUint16(0) === 0x4949;
  const first = tiff.getUint32(4, isLittle);
  if (first + 2 > tiff.byteLength) return null;
  const count = tiff.getUint16(first, isLittle);
  for (let i = 0; i < count; i += 1) {
    const at = first + 2 + 12 * i;
    if (at + 12 > tiff.byteLength) return null;
    if (tiff.getUint16(at, isLittle) !== ORIENTATION) continue;
    const value = tiff.getUint16(at + 8, isLittle);
    return value >= 1 && value <= 8 ? value : null;
  }
  return null;
}

/** The least Exif there is: how the picture is to be turned, nothing else. */
function turned(orientation: number): Uint8Array[] {
  if (orientation === 1) return [];
  const segment = new Uint8Array(36);
  const view = viewOf(segment);
  view.setUint16(0, 0xff00 | APP1);
  view.setUint16(2, 34);
  segment.set([0x45, 0x78, 0x69, 0x66, 0, 0], 4);
  view.setUint16(10, 0x4d4d);
  view.setUint16(12, 42);
  view.setUint32(14, 8);
  view.setUint16(18, 1);
  view.setUint16(20, ORIENTATION);
  view.setUint16(22, 3);
  view.setUint32(24, 1);
  view.setUint16(28, orientation);
  return [segment];
}
