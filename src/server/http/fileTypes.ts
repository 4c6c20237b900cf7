/** Kinds of picture that are taken and given back. SVG is not among them: it can carry scripts. */
export const PICTURE_TYPES = ["image/jpeg", "image/png", "image/webp"] as const;
export type PictureType = (typeof PICTURE_TYPES)[number];

/** First bytes, `null` for any: JPEG (ITU-T T.81, SOI and a marker), PNG (ISO/IEC 15948, 5.2), WebP (RFC 9649, 2.3). */
const BEGINNINGS: Readonly<Record<PictureType, readonly (number | null)[]>> = {
  "image/jpeg": [0xff, 0xd8, 0xff],
  "image/png": [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a],
  "image/webp": [0x52, 0x49, 0x46, 0x46, null, null, null, null, 0x57, 0x45, 0x42, 0x50],
};

/** What a picture really is by its first bytes, whatever it is called; null for anything that is not taken. */
export function pictureType(bytes: Uint8Array): PictureType | null {
  return (
    PICTURE_TYPES.find((type) => BEGINNINGS[type].every((byte, i) => i < bytes.length && (byte === null || bytes[i] === byte))) ?? null
  );
}
