import type { MiddlewareHandler } from "hono";
import { matchedRoutes } from "hono/route";
import type { Log } from "../log.ts";
import type { Meter } from "../metrics.ts";

/**
 * One line a request, and one in the count: which route (never the address itself, which can hold an id or a search word), how it ended, how long it took.
 *
 * @param nowMs a clock that only goes forward
 */
export function requestLog(log: Log, meter: Meter, nowMs: () => number): MiddlewareHandler {
  return async (context, next) => {
    const from = nowMs();
    await next();
    const ms = nowMs() - from;
    const { method } = context.req;
    // Those with a star are for many addresses: guards, and the page.
    const route = matchedRoutes(context).find(({ path }) => !path.includes("*"))?.path ?? "*";
    const { status } = context.res;
    meter.count({ method, route, status, seconds: ms / 1000 });
    log("info", {
      event: "request",
      method,
      route,
      status,
      ms: Math.round(10 * ms) / 10,
    });
  };
}

/** What may be logged of an error: its kind and where it came from. Its message may quote what a person wrote. */
export function withoutWords(error: unknown): { readonly error: string; readonly at: string } {
  if (!(error instanceof Error)) return { error: typeof error, at: "" };
  const frames = (error.stack ?? "").split("\n").filter((line) => /^\s+at /.test(line));
  return {
    error: error.name,
    at: frames
      .slice(0, 6)
      .map((line) => line.trim())
      .join(" < "),
  };
}
