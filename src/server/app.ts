import { Hono } from "hono";
import { secureHeaders } from "hono/secure-headers";
import type { PageFile } from "./pageFiles.ts";

export interface AppParts {
  /** Files of the page by their path in the address. */
  readonly files: ReadonlyMap<string, PageFile>;
}

/** Host names under which this machine reaches itself; any other is somebody else's page pointing its name here. */
const OWN_NAMES = new Set(["localhost", "127.0.0.1", "[::1]"]);
/** Bundles carry a digest of their content in their name: they never change. */
const NEVER_CHANGES = "public, max-age=31536000, immutable";

/** The server's whole behaviour as a function of requests; nothing listens yet. */
export function app({ files }: AppParts): Hono {
  const server = new Hono();
  server.use(
    secureHeaders({
      contentSecurityPolicy: {
        defaultSrc: ["'none'"],
        scriptSrc: ["'self'"],
        workerSrc: ["'self'"],
        // The widgets set their place on the page by style attributes.
        styleSrc: ["'self'", "'unsafe-inline'"],
        imgSrc: ["'self'", "data:", "blob:"],
        fontSrc: ["'self'"],
        connectSrc: ["'self'"],
        baseUri: ["'none'"],
        formAction: ["'none'"],
        frameAncestors: ["'none'"],
      },
      referrerPolicy: "no-referrer",
      xFrameOptions: "DENY",
      strictTransportSecurity: false,
    }),
  );
  server.use(async (context, next) => {
    const host = context.req.header("host")?.replace(/:\d+$/, "") ?? "localhost";
    if (!OWN_NAMES.has(host)) return context.text("This server answers to this machine only.", 421);
    return next();
  });
  server.get("*", (context) => {
    const path = context.req.path;
    // A path without a file extension is a room of the page, which finds its own way.
    const file = files.get(path) ?? (/\.[a-z0-9]+$/i.test(path) ? undefined : files.get("/index.html"));
    if (file === undefined) return context.text(`There is nothing at ${path}.`, 404);
    const caching = { ETag: file.tag, "Cache-Control": path.startsWith("/assets/") ? NEVER_CHANGES : "no-cache" };
    if (context.req.header("if-none-match") === file.tag) return context.body(null, 304, caching);
    return context.body(file.bytes, 200, { ...caching, "Content-Type": file.type });
  });
  return server;
}
