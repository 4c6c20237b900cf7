import { joined, latinOf, viewOf } from "./joined.ts";

/** `RIFF`, the size, `WEBP`. */
const HEADER = 12;
/** Flags of the extended header: what of it says that Exif and XMP follow (WebP container specification). */
const EXIF_AND_XMP = 0b0000_1100;
const PICTURE = new Set(["VP8 ", "VP8L", "VP8X", "ALPH", "ANIM", "ANMF", "ICCP"]);

/** The picture without Exif and XMP, and without anything behind its end; null where it is not a whole WebP. */
export function strippedWebp(bytes: Uint8Array): Uint8Array | null {
  if (bytes.length < HEADER) return null;
  const view = viewOf(bytes);
  const whole = 8 + view.getUint32(4, true);
  if (whole > bytes.length) return null;
  const kept: Uint8Array[] = [];
  let hasData = false;
  for (let at = HEADER; at + 8 <= whole; ) {
    const size = view.getUint32(at + 4, true);
    const end = at + 8 + size + (size % 2);
    if (end > whole) return null;
    const name = latinOf(bytes.subarray(at, at + 4));
    hasData ||= name.startsWith("VP8") || name === "ANMF";
    if (PICTURE.has(name)) kept.push(name === "VP8X" ? withoutFlags(bytes.slice(at, end)) : bytes.subarray(at, end));
    at = end;
  }
  return hasData ? withHeader(kept) : null;
}

function withoutFlags(chunk: Uint8Array): Uint8Array {
  chunk[8] &= ~EXIF_AND_XMP;
  return chunk;
}

function withHeader(chunks: readonly Uint8Array[]): Uint8Array {
  const header = new TextEncoder().encode("RIFF    WEBP");
  const all = joined([header, ...chunks]);
  viewOf(all).setUint32(4, all.length - 8, true);
  return all;
}
