import type { MiddlewareHandler } from "hono";
import { secureHeaders } from "hono/secure-headers";
import { Refusal } from "./refusal.ts";

/** Host names under which this machine reaches itself. */
const LOOPBACK_NAMES = ["localhost", "127.0.0.1", "[::1]"];
/** Headers that a proxy adds. Whoever asks through one does not sit at this machine. */
const FORWARDED = ["forwarded", "x-forwarded-for", "x-forwarded-host", "x-forwarded-proto", "x-real-ip", "via"];
const CHANGES_NOTHING = new Set(["GET", "HEAD"]);
/** Where a browser says a request comes from when it is this page, or a person who typed the address. */
const FROM_HERE = new Set(["same-origin", "none"]);

/** A year: browsers then come encrypted or not at all. */
const ENCRYPTED_ONLY = "max-age=31536000";

/** How this server is reached. */
export interface Reached {
  readonly isEncrypted: boolean;
  /** Whether others than this machine reach it. */
  readonly isOnNetwork: boolean;
  /** Host names, without port, beside this machine's own. */
  readonly names: readonly string[];
}

/** Nothing but what this server itself sends may run, be shown or be asked in its pages. */
export const strictHeaders = ({ isEncrypted, isOnNetwork }: Reached): MiddlewareHandler =>
  secureHeaders({
    // What only browsers obeyed that nobody has any more costs every answer its bytes.
    xDnsPrefetchControl: false,
    xDownloadOptions: false,
    xPermittedCrossDomainPolicies: false,
    xXssProtection: false,
    contentSecurityPolicy: {
      defaultSrc: ["'none'"],
      // The vector kernel is WebAssembly; without leave to compile it every plan would take twice as long. Text is still never run.
      scriptSrc: ["'self'", "'wasm-unsafe-eval'"],
      workerSrc: ["'self'"],
      // The widgets set their place on the page by style attributes.
      styleSrc: ["'self'", "'unsafe-inline'"],
      imgSrc: ["'self'", "data:", "blob:"],
      fontSrc: ["'self'"],
      connectSrc: ["'self'"],
      manifestSrc: ["'self'"],
      baseUri: ["'none'"],
      formAction: ["'none'"],
      frameAncestors: ["'none'"],
    },
    referrerPolicy: "no-referrer",
    xFrameOptions: "DENY",
    // Not for this machine itself: other programs on it are reached by the same name, without encryption.
    strictTransportSecurity: isEncrypted && isOnNetwork ? ENCRYPTED_ONLY : false,
  });

/**
 * Only requests by one of this server's names, and none that came through a proxy: any other name is somebody else's page pointing it here, and a proxy
 * would put its own address in the place of everybody's.
 */
export function ownNamesOnly({ names }: Reached): MiddlewareHandler {
  const own = new Set([...LOOPBACK_NAMES, ...names.map((name) => name.toLowerCase())]);
  return async (context, next) => {
    const host = context.req.header("host")?.replace(/:\d+$/, "").toLowerCase() ?? "localhost";
    if (!own.has(host)) throw new Refusal("misdirected");
    const forwarded = FORWARDED.find((name) => context.req.header(name) !== undefined);
    if (forwarded !== undefined) throw new Refusal("forwarded", { detail: `The header ${forwarded} says that a proxy stands between.` });
    return next();
  };
}

/**
 * Only this server's own pages may ask, where a browser asks. A browser always says where a write comes from; a program that
 * is no browser says nothing and is let in: it brings no cookie that it was not given.
 */
export function ownPagesOnly({ isEncrypted }: Reached): MiddlewareHandler {
  const scheme = isEncrypted ? "https" : "http";
  return async (context, next) => {
    const site = context.req.header("sec-fetch-site");
    if (site !== undefined && !FROM_HERE.has(site)) throw new Refusal("notFromHere", { detail: "The request comes from another site." });
    const origin = context.req.header("origin");
    const own = `${scheme}://${context.req.header("host") ?? ""}`;
    if (origin !== undefined && !CHANGES_NOTHING.has(context.req.method) && origin !== own)
      throw new Refusal("notFromHere", { detail: "The request comes from another origin." });
    return next();
  };
}
