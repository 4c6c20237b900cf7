import type { MiddlewareHandler } from "hono";
import { secureHeaders } from "hono/secure-headers";
import { Refusal } from "./refusal.ts";

/** Host names under which this machine reaches itself; any other is somebody else's page pointing its name here. */
const OWN_NAMES = new Set(["localhost", "127.0.0.1", "[::1]"]);
/** Headers that a proxy adds. Whoever asks through one does not sit at this machine. */
const FORWARDED = ["forwarded", "x-forwarded-for", "x-forwarded-host", "x-forwarded-proto", "x-real-ip", "via"];
const CHANGES_NOTHING = new Set(["GET", "HEAD"]);
/** Where a browser says a request comes from when it is this page, or a person who typed the address. */
const FROM_HERE = new Set(["same-origin", "none"]);

/** Nothing but what this server itself sends may run, be shown or be asked in its pages. */
export const strictHeaders: MiddlewareHandler = secureHeaders({
  contentSecurityPolicy: {
    defaultSrc: ["'none'"],
    scriptSrc: ["'self'"],
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
  strictTransportSecurity: false,
});

/** Only requests to this machine's own names, and none that came through a proxy. */
export const thisMachineOnly: MiddlewareHandler = async (context, next) => {
  const host = context.req.header("host")?.replace(/:\d+$/, "").toLowerCase() ?? "localhost";
  if (!OWN_NAMES.has(host)) throw new Refusal("misdirected");
  const forwarded = FORWARDED.find((name) => context.req.header(name) !== undefined);
  if (forwarded !== undefined) throw new Refusal("forwarded", { detail: `The header ${forwarded} says that a proxy stands between.` });
  return next();
};

/**
 * Only this server's own pages may ask, where a browser asks. A browser always says where a write comes from; a program that
 * is no browser says nothing and is let in, since it runs on this machine anyway.
 */
export const ownPagesOnly: MiddlewareHandler = async (context, next) => {
  const site = context.req.header("sec-fetch-site");
  if (site !== undefined && !FROM_HERE.has(site)) throw new Refusal("notFromHere", { detail: "The request comes from another site." });
  const origin = context.req.header("origin");
  if (origin !== undefined && !CHANGES_NOTHING.has(context.req.method) && origin !== `http://${context.req.header("host") ?? ""}`)
    throw new Refusal("notFromHere", { detail: "The request comes from another origin." });
  return next();
};
