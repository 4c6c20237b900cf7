import { crc32, deflateSync, inflateSync } from "node:zlib";
import { plainProfile } from "./icc.ts";
import { joined, latinOf, viewOf } from "./joined.ts";

const SIGNATURE = 8;
/** Length, name and checksum of a chunk. */
const AROUND = 12;

/** Chunks of the PNG specification (W3C, third edition) that the picture itself depends on; all others go. */
const PICTURE = new Set([
  "IHDR",
  "PLTE",
  "IDAT",
  "IEND",
  "tRNS",
  "gAMA",
  "cHRM",
  "sRGB",
  "cICP",
  "sBIT",
  "bKGD",
  "pHYs",
  "acTL",
  "fcTL",
  "fdAT",
]);

/** The picture without texts, times and Exif, and without anything behind its end; null where it is not a whole PNG. */
export function strippedPng(bytes: Uint8Array): Uint8Array | null {
  const view = viewOf(bytes);
  const kept: Uint8Array[] = [bytes.subarray(0, SIGNATURE)];
  let hasData = false;
  for (let at = SIGNATURE; at + AROUND <= bytes.length; ) {
    const end = at + AROUND + view.getUint32(at);
    if (end > bytes.length) return null;
    const name = latinOf(bytes.subarray(at + 4, at + 8));
    hasData ||= name === "IDAT";
    if (name === "iCCP") kept.push(...profileChunk(bytes.subarray(at + 8, end - 4)));
    else if (PICTURE.has(name)) kept.push(bytes.subarray(at, end));
    if (name === "IEND") return hasData ? joined(kept) : null;
    at = end;
  }
  return null;
}

/** A profile's name is free text too: all have the same. */
const NAME = "icc";
const MOST_PROFILE = 4_000_000;

/** The colour profile without words; nothing where there is none to be had. */
function profileChunk(body: Uint8Array): Uint8Array[] {
  const packed = body.subarray(body.indexOf(0) + 2);
  const plain = plainProfile(unpacked(packed));
  if (plain === null) return [];
  const inside = joined([new TextEncoder().encode(`iCCP${NAME}\0\0`), deflateSync(plain)]);
  const around = new Uint8Array(8);
  viewOf(around).setUint32(0, inside.length - 4);
  viewOf(around).setUint32(4, crc32(inside));
  return [joined([around.subarray(0, 4), inside, around.subarray(4)])];
}

function unpacked(packed: Uint8Array): Uint8Array {
  try {
    return inflateSync(packed, { maxOutputLength: MOST_PROFILE });
  } catch (fault) {
    // Damaged, or without end: no profile then.
    if (fault instanceof Error && "code" in fault) return new Uint8Array();
    throw fault;
  }
}
