import { Hono } from "hono";
import { HTTPException } from "hono/http-exception";
import type { Route } from "#contract/routes/route";
import type { Records } from "#records/records";
import type { Limits } from "./config/configSchema.ts";
import type { EventStreams } from "./http/events.ts";
import { refusalOf } from "./http/faults.ts";
import { ownNamesOnly, ownPagesOnly, type Reached, strictHeaders } from "./http/guards.ts";
import type { LanguageOf } from "./http/language.ts";
import { type Handlers, mount } from "./http/mount.ts";
import { page } from "./http/page.ts";
import { Refusal, refusalResponse } from "./http/refusal.ts";
import { requestLog, withoutWords } from "./http/requestLog.ts";
import { unknownRoute } from "./http/unknown.ts";
import { identifyVisitor, type PersonHere, type VisitorEnv } from "./http/visitor.ts";
import type { Log } from "./log.ts";
import type { Meter } from "./metrics.ts";
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
  readonly personHere: PersonHere;
  readonly accounts: Records["accounts"];
  readonly reached: Reached;
  readonly meter: Meter;
  readonly log: Log;
  /** Now, ms since 1970. */
  readonly now: () => number;
  /** A clock that only goes forward, ms. */
  readonly nowMs: () => number;
}

/** The server's whole behaviour as a function of requests; nothing listens yet. */
export function app<Table extends Readonly<Record<string, Route>>>(parts: AppParts<Table>): Hono<VisitorEnv> {
  const { reached, accounts, now } = parts;
  const server = new Hono<VisitorEnv>();
  server.onError((error) => answerTo(error, parts.log));
  server.use(requestLog(parts.log, parts.meter, parts.nowMs));
  server.use(strictHeaders(reached));
  server.use(ownNamesOnly(reached));
  server.use("/api/*", ownPagesOnly(reached));
  server.use("/api/*", identifyVisitor({ accounts, ...reached, now }));
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
