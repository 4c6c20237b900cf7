import { plainProfile } from "./icc.ts";
import { joined, latinOf, viewOf } from "./joined.ts";

/** `RIFF`, the size, `WEBP`. */
const HEADER = 12;
/** Flags of the extended header: what of it says that Exif and XMP follow (WebP container specification). */
const EXIF_AND_XMP = 0b0000_1100;
/** The flag that says a colour profile is there. */
const PROFILE = 0b0010_0000;
const PICTURE = new Set(["VP8 ", "VP8L", "VP8X", "ALPH", "ANIM", "ANMF"]);

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
    if (name === "ICCP") kept.push(...profileChunk(bytes.subarray(at + 8, at + 8 + size)));
    else if (PICTURE.has(name)) kept.push(bytes.slice(at, end));
    at = end;
  }
  return hasData ? withHeader(withRightFlags(kept)) : null;
}

/** The extended header says what follows. */
function withRightFlags(chunks: readonly Uint8Array[]): readonly Uint8Array[] {
  const nameOf = (chunk: Uint8Array) => latinOf(chunk.subarray(0, 4));
  const gone = EXIF_AND_XMP | (chunks.some((chunk) => nameOf(chunk) === "ICCP") ? 0 : PROFILE);
  for (const chunk of chunks) if (nameOf(chunk) === "VP8X") chunk[8] &= ~gone;
  return chunks;
}

function profileChunk(profile: Uint8Array): Uint8Array[] {
  const plain = plainProfile(profile);
  if (plain === null) return [];
  const head = new TextEncoder().encode("ICCP    ");
  viewOf(head).setUint32(4, plain.length, true);
  return [joined([head, plain, new Uint8Array(plain.length % 2)])];
}

function withHeader(chunks: readonly Uint8Array[]): Uint8Array {
  const header = new TextEncoder().encode("RIFF    WEBP");
  const all = joined([header, ...chunks]);
  viewOf(all).setUint32(4, all.length - 8, true);
  return all;
}
