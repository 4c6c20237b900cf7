import type { Hono } from "hono";
import type { BlankEnv } from "hono/types";
import type { z } from "zod";
import type { API } from "./api.ts";
import type { ProblemDocument } from "./problemDocument.ts";
import type { Route } from "./route.ts";

/*
 * The type of the server as its client sees it, made from the table alone: `hc<Api>("/")` needs nothing of the server.
 */

type Routes = (typeof API)[keyof typeof API];

/** Nothing is asked for: `unknown` would make the call itself impossible. */
// biome-ignore lint/complexity/noBannedTypes: an empty part of an intersection
type Nothing = {};

/** An address holds text only: numbers of a query are written out. */
type Written<T> = { [K in keyof T]: T[K] extends number ? `${number}` : T[K] extends number | undefined ? `${number}` | undefined : T[K] };

type InputOf<R extends Route> = (R["params"] extends z.ZodObject ? { param: z.input<R["params"]> } : Nothing) &
  (R["query"] extends z.ZodObject ? { query: Written<z.input<R["query"]>> } : Nothing) &
  (R["body"] extends { kind: "json"; schema: infer S extends z.ZodType } ? { json: z.input<S> } : Nothing) &
  (R["match"] extends true ? { header: { "If-Match": string } } : Nothing) &
  (R["key"] extends "required" ? { header: { "Idempotency-Key": string } } : Nothing);

type AnswerOf<R extends Route> = R["answer"] extends { kind: "json"; status: infer Status; schema: infer S extends z.ZodType }
  ? { output: z.output<S>; outputFormat: "json"; status: Status }
  : { output: unknown; outputFormat: string; status: R["answer"]["status"] };

type Failure = {
  output: ProblemDocument;
  outputFormat: "json";
  status: ProblemDocument["status"] extends number ? 400 | 401 | 403 | 404 | 409 | 412 | 422 | 428 | 429 | 500 | 503 : never;
};

type EndpointOf<R extends Route> = ({ input: InputOf<R> } & AnswerOf<R>) | ({ input: InputOf<R> } & Failure);

type ApiSchema = {
  [P in Routes["path"]]: { [R in Extract<Routes, { path: P }> as `$${R["method"]}`]: EndpointOf<R> };
};

/** The server as `hc` takes it. */
export type Api = Hono<BlankEnv, ApiSchema, "/">;
