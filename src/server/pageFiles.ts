import { createHash } from "node:crypto";
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { extname, join, relative, sep } from "node:path";
import { ENCODINGS, type Encoding } from "./http/encodings.ts";
import { inLanguage } from "./http/language.ts";

/** A file of the page, ready to be sent. */
export interface PageFile {
  readonly bytes: Uint8Array<ArrayBuffer>;
  readonly type: string;
  readonly tag: string;
  /** The same squeezed, where the build has laid it beside. */
  readonly squeezed?: ReadonlyMap<Encoding, Uint8Array<ArrayBuffer>>;
}

/** How the build names what it squeezed. */
const ENDINGS: Readonly<Record<Encoding, string>> = { br: ".br", gzip: ".gz" };

const TYPES: Readonly<Record<string, string>> = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".svg": "image/svg+xml",
  ".json": "application/json",
  ".png": "image/png",
  ".woff2": "font/woff2",
  ".webmanifest": "application/manifest+json",
};

/**
 * The page: one for all languages, which begins in each by a file of its own: `index.de.html` is what `/index.html` is in German. A page in the language of a
 * test, `web-pseudo`, lies beside it.
 *
 * @param parent the folder in which they lie
 */
export function pageInLanguages(parent: string): ReadonlyMap<string, PageFile> {
  const others = readdirSync(parent).filter((name) => /^web-[a-z]+$/.test(name));
  const files = pageFiles(join(parent, "web"));
  const begins = [...files].flatMap(([path, file]) => {
    const language = /^\/index\.([a-z]+)\.html$/.exec(path)?.[1];
    return language === undefined ? [] : [[inLanguage(language, "/index.html"), file] as const];
  });
  return new Map([
    ...files,
    ...begins,
    ...others.flatMap((name) => {
      const language = name.slice("web-".length);
      return [...pageFiles(join(parent, name))].map(([path, file]) => [inLanguage(language, path), file] as const);
    }),
  ]);
}

/**
 * Every file under a folder by its path in the address, e.g. `/assets/index.js`. The page is small: it is read once,
 * so nothing outside the folder can ever be asked for. Files of no known kind are not served.
 */
export function pageFiles(folder: string): ReadonlyMap<string, PageFile> {
  const files = new Map<string, PageFile>();
  for (const entry of readdirSync(folder, { recursive: true, withFileTypes: true })) {
    const type = TYPES[extname(entry.name)];
    if (!entry.isFile() || type === undefined) continue;
    const path = join(entry.parentPath, entry.name);
    const bytes = new Uint8Array(readFileSync(path));
    const squeezed = new Map(
      ENCODINGS.flatMap((encoding) => {
        const beside = `${path}${ENDINGS[encoding]}`;
        return existsSync(beside) ? [[encoding, new Uint8Array(readFileSync(beside))] as const] : [];
      }),
    );
    const tag = `"${createHash("sha256").update(bytes).digest("base64url").slice(0, 22)}"`;
    files.set(`/${relative(folder, path).split(sep).join("/")}`, { bytes, type, tag, squeezed });
  }
  return files;
}
