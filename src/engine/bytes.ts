/** Bytes as text that source code can hold, and whether they are still the same. */

const DIGITS = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";

/** RFC 4648 §4. */
export function toBase64(bytes: ArrayLike<number>): string {
  let text = "";
  for (let i = 0; i < bytes.length; i += 3) {
    const three = (bytes[i] << 16) | ((bytes[i + 1] ?? 0) << 8) | (bytes[i + 2] ?? 0);
    for (let digit = 0; digit < 4; digit++) text += i + digit > bytes.length ? "=" : DIGITS[(three >> (18 - 6 * digit)) & 63];
  }
  return text;
}

/** RFC 4648 §4; characters outside the alphabet count as zeros: whoever reads checks the length and the sum. */
export function fromBase64(text: string): Uint8Array {
  const padding = text.endsWith("==") ? 2 : text.endsWith("=") ? 1 : 0;
  const bytes = new Uint8Array((text.length / 4) * 3 - padding);
  for (let i = 0, at = 0; i < text.length; i += 4) {
    let three = 0;
    for (let digit = 0; digit < 4; digit++) three = (three << 6) | Math.max(0, DIGITS.indexOf(text[i + digit]));
    for (let byte = 0; byte < 3 && at < bytes.length; byte++) bytes[at++] = (three >> (16 - 8 * byte)) & 255;
  }
  return bytes;
}

/** CRC-32 of ISO 3309 and ITU-T V.42: a sum that a damaged byte changes. Of "123456789" it is cbf43926. */
export function crc32(bytes: Uint8Array): number {
  let sum = 0xffffffff;
  for (const byte of bytes) {
    sum ^= byte;
    for (let bit = 0; bit < 8; bit++) sum = sum & 1 ? (sum >>> 1) ^ 0xedb88320 : sum >>> 1;
  }
  return (sum ^ 0xffffffff) >>> 0;
}
