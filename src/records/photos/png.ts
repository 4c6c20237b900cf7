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
  "iCCP",
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
    if (PICTURE.has(name)) kept.push(bytes.subarray(at, end));
    if (name === "IEND") return hasData ? joined(kept) : null;
    at = end;
  }
  return null;
}
