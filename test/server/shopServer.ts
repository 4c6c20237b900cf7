import { randomUUID } from "node:crypto";
import { expect } from "vitest";
import { API } from "#contract/routes/api";
import { type ProblemDocument, problemDocumentSchema } from "#contract/routes/problemDocument";
import { type ProblemKind, problemType } from "#contract/routes/problemKinds";
import type { Route } from "#contract/routes/route";
import type { Records } from "#records/records";
import { type Config, type Limits, USUAL } from "#server/config/configSchema";
import { jsonLog } from "#server/log";
import type { PageFile } from "#server/pageFiles";
import { assemble } from "#server/startServer";
import type { Executor } from "#tasks/executor";
import { inlineExecutor } from "#tasks/inlineExecutor";
import { type TestShop, testShop } from "../records/shop.ts";

export interface AskOptions {
  readonly params?: Readonly<Record<string, string>>;
  readonly query?: Readonly<Record<string, string>>;
  readonly body?: unknown;
  readonly headers?: Readonly<Record<string, string>>;
}

export interface ShopServer {
  readonly records: Records;
  readonly by: string;
  /** Lines of the log so far. */
  readonly logged: readonly string[];
  /** Asks a route of the table and holds what comes back to the table: status, schema, headers. */
  ask<Name extends keyof typeof API>(name: Name, options?: AskOptions): Promise<Reply>;
  /** Asks anything, as it is. */
  raw(path: string, init?: RequestInit): Promise<Response>;
  /** What the router holds. */
  readonly mounted: readonly { readonly method: string; readonly path: string }[];
  close(): Promise<void>;
  end(): Promise<void>;
}

export interface Reply {
  readonly status: number;
  readonly headers: Headers;
  // biome-ignore lint/suspicious/noExplicitAny: the body has been held to the route's schema already
  readonly body: any;
  readonly bytes: Uint8Array;
}

export const HOST = "127.0.0.1:4780";

/** The whole server over an empty shop in a folder of its own, asked in this process. */
export async function shopServer(
  options: {
    readonly limits?: Partial<Limits>;
    readonly config?: Partial<Config>;
    readonly executor?: Executor;
    readonly files?: ReadonlyMap<string, PageFile>;
    /** Whose server it is; an empty shop of its own where nothing is said. */
    readonly shop?: TestShop;
  } = {},
): Promise<ShopServer> {
  const shop = options.shop ?? (await testShop());
  const logged: string[] = [];
  const { server, close } = assemble({
    config: { ...USUAL, ...options.config, limits: { ...USUAL.limits, ...options.limits } },
    records: shop.records,
    executor: options.executor ?? inlineExecutor,
    files: options.files ?? new Map(),
    log: jsonLog(
      "requests",
      (line) => logged.push(line),
      () => "2026-05-31T18:00:00.000Z",
    ),
    now: shop.parts.now,
    nowMs: () => performance.now(),
    newId: randomUUID,
    version: "0.0.0-test",
  });
  const raw = async (path: string, init: RequestInit = {}): Promise<Response> =>
    server.request(path, { ...init, headers: { host: HOST, ...(init.headers as Record<string, string>) } });
  return {
    records: shop.records,
    by: shop.by,
    logged,
    raw,
    mounted: server.routes,
    async ask(name, { params = {}, query = {}, body, headers = {} } = {}) {
      const route: Route = API[name];
      const path = route.path.replace(/:(\w+)/g, (_, param: string) => encodeURIComponent(params[param] ?? ""));
      const search = new URLSearchParams(query).toString();
      const response = await raw(search === "" ? path : `${path}?${search}`, {
        method: route.method.toUpperCase(),
        headers: { ...(body === undefined ? {} : { "content-type": "application/json" }), ...headers },
        ...(body === undefined ? {} : { body: body instanceof Uint8Array ? new Uint8Array(body) : JSON.stringify(body) }),
      });
      return heldTo(route, response);
    },
    close,
    async end() {
      await close();
      await shop.end();
    },
  };
}

/** Whatever comes back is what the table promises: the route's own answer, or problem details. */
async function heldTo(route: Route, response: Response): Promise<Reply> {
  const bytes = new Uint8Array(await response.arrayBuffer());
  const type = response.headers.get("content-type") ?? "";
  const reply = { status: response.status, headers: response.headers, bytes, body: null as unknown };
  if (response.status >= 400) {
    expect(type).toContain("application/problem+json");
    const problem = problemDocumentSchema.parse(JSON.parse(new TextDecoder().decode(bytes)));
    expect(problem.status).toBe(response.status);
    return { ...reply, body: problem };
  }
  if (response.status === 304) return reply;
  expect(response.status).toBe(route.answer.status);
  if (route.answer.kind !== "json") return reply;
  const body: unknown = JSON.parse(new TextDecoder().decode(bytes));
  expect(route.answer.schema.safeParse(body).error).toBeUndefined();
  return { ...reply, body };
}

/** Holds a reply to one kind of problem, and gives its document. */
export function problemOf(reply: Reply, kind: ProblemKind): ProblemDocument {
  expect(reply.body).toMatchObject({ type: problemType(kind) });
  return reply.body as ProblemDocument;
}
