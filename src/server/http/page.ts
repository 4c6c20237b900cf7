import type { Handler } from "hono";
import type { PageFile } from "../pageFiles.ts";

/** Bundles carry a digest of their content in their name: they never change. */
const NEVER_CHANGES = "public, max-age=31536000, immutable";

/** Serves the files of the page; a path without a file extension is a room of the page, which finds its own way. */
export function page(files: ReadonlyMap<string, PageFile>): Handler {
  return (context) => {
    const path = context.req.path;
    const file = files.get(path) ?? (/\.[a-z0-9]+$/i.test(path) ? undefined : files.get("/index.html"));
    if (file === undefined) return context.text(`There is nothing at ${path}.`, 404);
    const caching = { ETag: file.tag, "Cache-Control": path.startsWith("/assets/") ? NEVER_CHANGES : "no-cache" };
    if (context.req.header("if-none-match") === file.tag) return context.body(null, 304, caching);
    return context.body(file.bytes, 200, { ...caching, "Content-Type": file.type });
  };
}
