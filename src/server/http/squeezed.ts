import { promisify } from "node:util";
import { brotliCompress, constants, gzip } from "node:zlib";
import type { Route } from "#contract/routes/route";
import { type Encoding, encodingFor } from "./encodings.ts";

/** Below this the heads of an answer weigh more than what would be saved, bytes. */
const WORTH_IT = 1000;
/** What is read once is squeezed in a millisecond or two: brotli's lower levels beat gzip's usual one in both size and time. */
const BROTLI = { params: { [constants.BROTLI_PARAM_QUALITY]: 4 } };
const brotli = promisify<Uint8Array, typeof BROTLI, Buffer>(brotliCompress);
const gzipped = promisify<Uint8Array, Buffer>(gzip);

/** The door's own answers stay plain: how well a text with a secret squeezes tells of the secret to whoever may put words beside it. No other answer holds one. */
const DOOR = /^\/api\/(sessions?|sign-ins|people)(\/|$)/;

/** A document as it goes out: squeezed where it is long, was only read, and the asker takes it. */
export async function squeezed(
  text: string,
  route: Route,
  accepted: string | undefined,
): Promise<{ body: Uint8Array<ArrayBuffer>; encoding: Encoding | null }> {
  const bytes = new TextEncoder().encode(text);
  const encoding = bytes.length >= WORTH_IT && route.method === "get" && !DOOR.test(route.path) ? encodingFor(accepted) : null;
  if (encoding === null) return { body: bytes, encoding };
  return { body: new Uint8Array(encoding === "br" ? await brotli(bytes, BROTLI) : await gzipped(bytes)), encoding };
}
