import { createHash } from "node:crypto";
import { readFile, stat } from "node:fs/promises";
import { promisify } from "node:util";
import { gunzip } from "node:zlib";
import { parseTar } from "nanotar";
import { z } from "zod";

/** The update was not made; the message says why, and that the version before goes on. */
export class NoUpdate extends Error {
  override readonly name = "NoUpdate";
  /** Whether the file was good, and the version in it not well. */
  readonly isSick: boolean;

  constructor(message: string, about: "the file" | "the version" = "the file") {
    super(message);
    this.isSick = about === "the version";
  }
}

export interface Inspected {
  readonly version: string;
  readonly sha256: string;
}

/** More than a package of ours has ever had, packed and unpacked. */
const MOST_BYTES = 100e6;
const MOST_UNPACKED = 500e6;
/** Without these it is not a whole program. */
const PARTS = ["dist/cli/main.js", "dist/server/serve.js", "dist/web/index.html"].map((path) => `package/${path}`);

const manifestSchema = z.object({
  name: z.literal("gritwright"),
  version: z.string().regex(/^\d+\.\d+\.\d+(?:-[\w.]+)?$/),
  engines: z
    .object({ node: z.string().regex(/^>=\d+(?:\.\d+)*$/) })
    .partial()
    .optional(),
});

/**
 * Looks into a package file before anything of it is run: that it is whole (gzip has a checksum of everything), one of ours, and for this Node.
 *
 * @throws {NoUpdate}
 */
export async function inspected(path: string, node: string): Promise<Inspected> {
  const packed = await bytesOf(path);
  const unpacked = await promisify(gunzip)(packed, { maxOutputLength: MOST_UNPACKED }).catch(() => null);
  if (unpacked === null) throw new NoUpdate(`${path} is damaged, or was not fetched to its end. Fetch it once more. Nothing has changed.`);
  // Copied: a small file may lie somewhere within a larger buffer, and the reader looks at the whole of that.
  const files = parseTar(Uint8Array.from(unpacked));
  const manifest = manifestSchema.safeParse(jsonOf(files.find(({ name }) => name === "package/package.json")?.text));
  const isWhole = PARTS.every((part) => files.some(({ name, size }) => name === part && size > 0));
  if (!manifest.success || !isWhole) throw new NoUpdate(`${path} is no package of Gritwright as npm pack makes it. Nothing has changed.`);
  const { version, engines } = manifest.data;
  const wanted = engines?.node?.slice(2) ?? "0";
  if (isOlder(node, wanted))
    throw new NoUpdate(`Version ${version} wants Node ${wanted} or newer; this is ${node}. Install that first. Nothing has changed.`);
  return { version, sha256: createHash("sha256").update(packed).digest("hex") };
}

async function bytesOf(path: string): Promise<Buffer> {
  try {
    if ((await stat(path)).size <= MOST_BYTES) return await readFile(path);
  } catch (error) {
    const code = error instanceof Error && "code" in error ? String(error.code) : String(error);
    throw new NoUpdate(`${path} cannot be read (${code}). Nothing has changed.`);
  }
  throw new NoUpdate(`${path} is larger than a package of Gritwright is. Nothing has changed.`);
}

function jsonOf(text: string | undefined): unknown {
  try {
    return JSON.parse(text ?? "");
  } catch {
    return null;
  }
}

function isOlder(version: string, than: string): boolean {
  const [have, want] = [version, than].map((text) => text.split(".").map(Number));
  for (const [at, wanted] of want.entries()) if ((have[at] ?? 0) !== wanted) return (have[at] ?? 0) < wanted;
  return false;
}
