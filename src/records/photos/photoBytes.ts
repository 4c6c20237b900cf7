import type { PHOTO_TYPES } from "#contract/records/attachment";
import { RecordsFault } from "#contract/records/fault";
import { strippedJpeg } from "./jpeg.ts";
import { strippedPng } from "./png.ts";
import { strippedWebp } from "./webp.ts";

export type PhotoType = (typeof PHOTO_TYPES)[number];

export const EXTENSIONS: Readonly<Record<PhotoType, string>> = { "image/jpeg": "jpg", "image/png": "png", "image/webp": "webp" };

const MOST_BYTES = 40_000_000;
const ALLOWED = "a whole JPEG, PNG or WebP of up to 40 MB";

/**
 * What the bytes are, told by themselves, and the same picture without what else a camera wrote into it: place, time, make, notes,
 * and whatever hangs on behind the picture. How the picture is to be turned is kept.
 *
 * @throws {RecordsFault} `refused` where they are no whole picture of a kind that is kept
 */
export function photoOf(bytes: Uint8Array): { readonly type: PhotoType; readonly bytes: Uint8Array } {
  const type = typeOf(bytes);
  const stripped = type === null || bytes.length > MOST_BYTES ? null : STRIPPERS[type](bytes);
  if (type !== null && stripped !== null) return { type, bytes: stripped };
  throw new RecordsFault("refused", "photos", {
    problems: [{ path: "bytes", value: `${bytes.length} bytes, ${type ?? "of another kind"}`, allowed: ALLOWED }],
  });
}

const STRIPPERS: Readonly<Record<PhotoType, (bytes: Uint8Array) => Uint8Array | null>> = {
  "image/jpeg": strippedJpeg,
  "image/png": strippedPng,
  "image/webp": strippedWebp,
};

function typeOf(bytes: Uint8Array): PhotoType | null {
  const latin = String.fromCharCode(...bytes.subarray(0, 12));
  if (latin.startsWith("\xff\xd8\xff")) return "image/jpeg";
  if (latin.startsWith("\x89PNG\r\n\x1a\n")) return "image/png";
  return latin.startsWith("RIFF") && latin.endsWith("WEBP") ? "image/webp" : null;
}
