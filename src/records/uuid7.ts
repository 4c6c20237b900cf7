/**
 * Ids of RFC 9562, version 7: 48 bits of time, then 12 bits that count within a millisecond, then chance.
 * They sort by the time they were made, also within one millisecond, and when the clock is set back.
 *
 * @param now milliseconds since 1970
 * @param randomBytes so many bytes of chance
 */
export function uuid7Source(now: () => number, randomBytes: (count: number) => Uint8Array): () => string {
  let last = 0;
  let counter = 0;
  return () => {
    const time = Math.max(Math.floor(now()), last);
    const chance = randomBytes(10);
    // A new millisecond starts low in the 12 bits, which leaves room to count.
    counter = time > last ? ((chance[8] << 8) | chance[9]) & 0x3ff : counter + 1;
    last = counter > 0xfff ? time + 1 : time;
    if (counter > 0xfff) counter = 0;
    const bytes = new Uint8Array(16);
    const view = new DataView(bytes.buffer);
    view.setUint16(0, Math.floor(last / 2 ** 32));
    view.setUint32(2, last % 2 ** 32);
    view.setUint16(6, 0x7000 | counter);
    bytes.set(chance.subarray(0, 8), 8);
    bytes[8] = 0x80 | (bytes[8] & 0x3f);
    return [...bytes].map((byte, i) => (DASH_BEFORE.has(i) ? "-" : "") + byte.toString(16).padStart(2, "0")).join("");
  };
}

const DASH_BEFORE = new Set([4, 6, 8, 10]);
