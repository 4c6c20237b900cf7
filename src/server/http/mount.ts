import { Readable } from "node:stream";
import type { Context, Hono, MiddlewareHandler } from "hono";
import type { z } from "zod";
import type { Route } from "#contract/routes/route";
import type { Accounts } from "#records/accounts/accounts";
import type { Limits } from "../config/configSchema.ts";
import { bodiesUnderWay } from "./bodies.ts";
import type { EventProducer, EventStreams } from "./events.ts";
import { passwordAgain } from "./passwordAgain.ts";
import { type CheckedRequest, readRequest } from "./request.ts";
import { squeezed } from "./squeezed.ts";
import { mustBeLetIn, type PersonHere, personOf, type VisitorEnv } from "./visitor.ts";

/** A file that comes back. */
export interface SentFile {
  /** A file that may be larger than memory comes piece by piece; where it breaks off, so does the answer. */
  readonly bytes: Uint8Array | AsyncIterable<Uint8Array>;
  readonly type: string;
  /** Under which name it is saved; null where it is shown in the page. */
  readonly name: string | null;
}

type ReplyOf<A> = A extends { kind: "json"; schema: infer S extends z.ZodType }
  ? z.output<S>
  : A extends { kind: "file" }
    ? SentFile
    : A extends { kind: "events" }
      ? EventProducer
      : undefined;

export type Handler<R extends Route> = (request: CheckedRequest<R>) => Promise<ReplyOf<R["answer"]>>;
/** A handler for every route of a table: the compiler counts them. */
export type Handlers<Table extends Readonly<Record<string, Route>>> = { readonly [Name in keyof Table]: Handler<Table[Name]> };

export interface Mounting {
  readonly limits: Limits;
  readonly streams: EventStreams;
  readonly personHere: PersonHere;
  readonly accounts: Pick<Accounts, "doubt">;
}

const MEGABYTE = 1_000_000;
const KILOBYTE = 1000;

/** Puts every route of a table on the server. */
export function mount<Table extends Readonly<Record<string, Route>>>(
  server: Hono<VisitorEnv>,
  table: Table,
  handlers: Handlers<Table>,
  { limits, streams, personHere, accounts }: Mounting,
): void {
  const bodies = bodiesUnderWay();
  for (const [name, route] of Object.entries(table)) {
    // Name and route come from one entry of the table, so handler and route belong together.
    const handle = handlers[name as keyof Table] as unknown as Handler<Route>;
    const most = route.body?.kind === "file" ? limits.fileMb * MEGABYTE : limits.bodyKb * KILOBYTE;
    server.on(route.method.toUpperCase(), route.path, letIn(route), passwordAgain(route, accounts), bodies.limit(most), async (context) => {
      const { visitor } = context.var;
      const by = route.least === "anybody" ? null : await personOf(context, visitor, personHere);
      const request = await readRequest(context, route, visitor, by);
      return replyTo(context, route, await handle(request), streams);
    });
  }
}

/** Before anything of the body is read. */
function letIn({ least }: Route): MiddlewareHandler<VisitorEnv> {
  return (context, next) => {
    mustBeLetIn(context.var.visitor, least);
    return next();
  };
}

function replyTo(context: Context<VisitorEnv>, route: Route, reply: unknown, streams: EventStreams): Response | Promise<Response> {
  switch (route.answer.kind) {
    case "none":
      return context.body(null, 204);
    case "events":
      return streams.open(context, context.var.visitor, reply as EventProducer);
    case "file":
      return fileReply(context, reply as SentFile);
    case "json":
      return jsonReply(context, route, reply, route.answer.status);
  }
}

async function jsonReply(context: Context, route: Route, reply: unknown, status: 200 | 201 | 202): Promise<Response> {
  const about = reply as { readonly id?: unknown; readonly version?: unknown };
  const headers: Record<string, string> = { "Cache-Control": "no-store", Vary: "Accept-Encoding" };
  if (typeof about.version === "number") headers.ETag = `"${about.version}"`;
  if (route.location !== undefined) headers.Location = route.location.replace(":id", String(about.id));
  if (headers.ETag !== undefined && context.req.method === "GET" && context.req.header("if-none-match") === headers.ETag)
    return context.body(null, 304, headers);
  const { body, encoding } = await squeezed(JSON.stringify(reply), route, context.req.header("accept-encoding"));
  if (encoding !== null) headers["Content-Encoding"] = encoding;
  return context.body(body, status, { ...headers, "Content-Type": "application/json" });
}

function fileReply(context: Context, { bytes, type, name }: SentFile): Response {
  const disposition = name === null ? "inline" : `attachment; filename="${name}"`;
  const headers = { "Content-Type": type, "Content-Disposition": disposition, "Cache-Control": "private, no-cache" };
  const body = bytes instanceof Uint8Array ? new Uint8Array(bytes) : (Readable.toWeb(Readable.from(bytes)) as ReadableStream);
  return context.body(body, 200, headers);
}
