/** Turns of each round (RFC 1321, section 3.4). */
const TURNS = [
  [7, 12, 17, 22],
  [5, 9, 14, 20],
  [4, 11, 16, 23],
  [6, 10, 15, 21],
] as const;
/** T[i] = the whole part of 2³² |sin(i + 1)| (RFC 1321, section 3.4). */
const SINES = Uint32Array.from({ length: 64 }, (_, i) => Math.floor(2 ** 32 * Math.abs(Math.sin(i + 1))));
const BLOCK = 64;
const LENGTH_BYTES = 8;

/**
 * MD5 (RFC 1321) as hexadecimal text. X3P files carry it to tell a damaged file from a whole one; it guards against nobody. Written out here because the page has no such digest of its own.
 */
export function md5(bytes: Uint8Array): string {
  const state = Uint32Array.of(0x67452301, 0xefcdab89, 0x98badcfe, 0x10325476);
  const whole = bytes.length - (bytes.length % BLOCK);
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  for (let at = 0; at < whole; at += BLOCK) takeBlock(state, view, at);
  const tail = lastBlocks(bytes.subarray(whole), bytes.length);
  for (let at = 0; at < tail.byteLength; at += BLOCK) takeBlock(state, tail, at);
  const out = new DataView(new ArrayBuffer(16));
  state.forEach((word, i) => {
    out.setUint32(4 * i, word, true);
  });
  return Array.from({ length: 16 }, (_, i) => out.getUint8(i).toString(16).padStart(2, "0")).join("");
}

/** What is left over, a one bit, zeros, and the length in bits at the end of the last block. */
function lastBlocks(rest: Uint8Array, length: number): DataView {
  const blocks = rest.length + 1 + LENGTH_BYTES > BLOCK ? 2 : 1;
  const padded = new Uint8Array(blocks * BLOCK);
  padded.set(rest);
  padded[rest.length] = 0x80;
  const view = new DataView(padded.buffer);
  view.setUint32(padded.length - 8, (length * 8) % 2 ** 32, true);
  view.setUint32(padded.length - 4, Math.floor((length * 8) / 2 ** 32), true);
  return view;
}

function takeBlock(state: Uint32Array, view: DataView, at: number): void {
  let [a, b, c, d] = state;
  for (let i = 0; i < 64; i++) {
    const round = i >> 4;
    const mixed = (a + mix(round, b, c, d) + SINES[i] + view.getUint32(at + 4 * wordOf(round, i), true)) | 0;
    const turn = TURNS[round][i & 3];
    [a, d, c, b] = [d, c, b, (b + ((mixed << turn) | (mixed >>> (32 - turn)))) | 0];
  }
  state[0] += a;
  state[1] += b;
  state[2] += c;
  state[3] += d;
}

function mix(round: number, b: number, c: number, d: number): number {
  if (round === 0) return (b & c) | (~b & d);
  if (round === 1) return (b & d) | (c & ~d);
  return round === 2 ? b ^ c ^ d : c ^ (b | ~d);
}

function wordOf(round: number, i: number): number {
  if (round === 0) return i;
  if (round === 1) return (5 * i + 1) % 16;
  return round === 2 ? (3 * i + 5) % 16 : (7 * i) % 16;
}
