import type { Handler } from "hono";
import type { PageFile } from "../pageFiles.ts";
import { encodingFor } from "./encodings.ts";
import { inLanguage, type LanguageOf } from "./language.ts";

/** Bundles carry a digest of their content in their name: they never change. */
const NEVER_CHANGES = "public, max-age=31536000, immutable";

/** Serves the files of the page in the language that is wanted; a path without a file extension is a room of the page, which finds its own way. */
export function page(files: ReadonlyMap<string, PageFile>, languageOf: LanguageOf): Handler {
  return async (context) => {
    const path = context.req.path;
    const language = await languageOf(context);
    const find = (wanted: string): PageFile | undefined =>
      files.get(inLanguage(language, wanted)) ?? files.get(wanted) ?? ofAny(files, wanted);
    const file = find(path) ?? (/\.[a-z0-9]+$/i.test(path) ? undefined : find("/index.html"));
    if (file === undefined) return context.text(`There is nothing at ${path}.`, 404);
    const encoding = encodingFor(context.req.header("accept-encoding"), [...(file.squeezed?.keys() ?? [])]);
    const headers = {
      // Squeezed it is another representation, with a tag of its own.
      ETag: encoding === null ? file.tag : file.tag.replace(/"$/, `-${encoding}"`),
      Vary: "Accept-Language, Accept-Encoding",
      ...(file.type.startsWith("text/html") ? { "Content-Language": language } : {}),
      "Cache-Control": path.startsWith("/assets/") ? NEVER_CHANGES : "no-cache",
    };
    if (context.req.header("if-none-match") === headers.ETag) return context.body(null, 304, headers);
    const body = encoding === null ? file.bytes : (file.squeezed?.get(encoding) ?? file.bytes);
    const squeezed = encoding === null ? {} : { "Content-Encoding": encoding };
    return context.body(body, 200, { ...headers, ...squeezed, "Content-Type": file.type, "Accept-Ranges": "none" });
  };
}

/** A bundle of another language: a page that was opened in one goes on in it. */
function ofAny(files: ReadonlyMap<string, PageFile>, path: string): PageFile | undefined {
  if (!path.startsWith("/assets/")) return undefined;
  for (const [key, file] of files) if (key.endsWith(`:${path}`)) return file;
  return undefined;
}
