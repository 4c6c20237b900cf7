import { Hono } from "hono";
import { HTTPException } from "hono/http-exception";
import type { Route } from "#contract/routes/route";
import type { Limits } from "./config/configSchema.ts";
import type { EventStreams } from "./http/events.ts";
import { refusalOf } from "./http/faults.ts";
import { ownPagesOnly, strictHeaders, thisMachineOnly } from "./http/guards.ts";
import type { LanguageOf } from "./http/language.ts";
import { type Handlers, mount, type WhoActs } from "./http/mount.ts";
import { page } from "./http/page.ts";
import { Refusal, refusalResponse } from "./http/refusal.ts";
import { requestLog, withoutWords } from "./http/requestLog.ts";
import { unknownRoute } from "./http/unknown.ts";
import type { Log } from "./log.ts";
import type { PageFile } from "./pageFiles.ts";

export interface AppParts<Table extends Readonly<Record<string, Route>>> {
  /** Files of the page by their path in the address. */
  readonly files: ReadonlyMap<string, PageFile>;
  /** The language in which a request for the page is answered. */
  readonly languageOf: LanguageOf;
  readonly table: Table;
  readonly handlers: Handlers<Table>;
  readonly limits: Limits;
  readonly streams: EventStreams;
  readonly whoActs: WhoActs;
  readonly log: Log;
  /** A clock that only goes forward, ms. */
  readonly nowMs: () => number;
}

/** The server's whole behaviour as a function of requests; nothing listens yet. */
export function app<Table extends Readonly<Record<string, Route>>>(parts: AppParts<Table>): Hono {
  const server = new Hono();
  server.onError((error) => answerTo(error, parts.log));
  server.use(requestLog(parts.log, parts.nowMs));
  server.use(strictHeaders);
  server.use(thisMachineOnly);
  server.use("/api/*", ownPagesOnly);
  mount(server, parts.table, parts.handlers, parts);
  server.all("/api/*", unknownRoute(parts.table));
  server.get("*", page(parts.files, parts.languageOf));
  return server;
}

function answerTo(error: unknown, log: Log): Response {
  const refusal = refusalOf(error);
  if (refusal !== null) return refusalResponse(refusal);
  if (error instanceof HTTPException && error.status < 500) return refusalResponse(new Refusal("notRead"));
  log("error", { event: "broken", ...withoutWords(error) });
  return refusalResponse(new Refusal("broken"));
}
