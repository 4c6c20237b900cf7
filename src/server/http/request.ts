import { createHash } from "node:crypto";
import type { Context } from "hono";
import { z } from "zod";
import { checkFile } from "#contract/job/checkJob";
import type { Route } from "#contract/routes/route";
import { fieldRefusal, Refusal } from "./refusal.ts";
import type { Visitor } from "./visitor.ts";

type OutputOf<S> = S extends z.ZodType ? z.output<S> : Readonly<Record<string, never>>;
type BodyOf<B> = B extends { kind: "json"; schema: infer S extends z.ZodType }
  ? z.output<S>
  : B extends { kind: "file" }
    ? Uint8Array
    : null;

/** A retry is known by what was asked for with which key; the digest shows whether it really is the same request. */
export interface IdempotencyKey {
  readonly route: string;
  readonly key: string;
  readonly bodyHash: string;
}

/** A request that has been read and checked against its route. */
export interface CheckedRequest<R extends Route = Route> {
  readonly params: OutputOf<R["params"]>;
  readonly query: OutputOf<R["query"]>;
  readonly body: BodyOf<R["body"]>;
  /** The version that `If-Match` names; there for every route that has `match`. */
  readonly version: R["match"] extends true ? number : null;
  readonly key: IdempotencyKey | null;
  /** Which person of the shop acts; nobody does where anybody may ask. */
  readonly by: R["least"] extends "anybody" ? null : string;
  readonly visitor: Visitor;
  /** Ends when the asker goes away. */
  readonly signal: AbortSignal;
}

const LONGEST_KEY = 128;
const NO_FIELDS = z.object({});

/**
 * Reads a request as its route describes it.
 *
 * @param by which person of the shop acts; null where anybody may ask
 * @throws {Refusal} for headers and bodies that cannot be read
 * @throws {JobFault} with every field that is not allowed
 */
export async function readRequest(context: Context, route: Route, visitor: Visitor, by: string | null): Promise<CheckedRequest> {
  const bytes = route.body === undefined ? new Uint8Array() : new Uint8Array(await context.req.arrayBuffer());
  const params = route.params === undefined ? {} : checkFile(route.params, context.req.param());
  const query = checkFile(...queryOf(route, context));
  return {
    params: params as CheckedRequest["params"],
    query: query as CheckedRequest["query"],
    body: bodyOf(context, route, bytes) as CheckedRequest["body"],
    version: (route.match === true ? versionOf(context) : null) as CheckedRequest["version"],
    key: keyOf(context, route, bytes),
    by: by as CheckedRequest["by"],
    visitor,
    signal: context.req.raw.signal,
  };
}

function queryOf(route: Route, context: Context): [z.ZodType, unknown] {
  return [route.query ?? NO_FIELDS, route.query === undefined ? {} : context.req.query()];
}

function bodyOf(context: Context, route: Route, bytes: Uint8Array): unknown {
  if (route.body === undefined) return null;
  const type = context.req.header("content-type")?.split(";")[0].trim().toLowerCase() ?? "";
  const taken = route.body.kind === "json" ? ["application/json"] : route.body.types;
  if (!taken.includes(type)) throw fieldRefusal("wrongType", "Content-Type", type, taken.join(", "), `Send ${taken.join(" or ")}.`);
  if (route.body.kind === "file") return bytes;
  const { schema, older = (body) => body } = route.body;
  return checkFile(schema, older(parsed(bytes)));
}

function parsed(bytes: Uint8Array): unknown {
  try {
    return JSON.parse(new TextDecoder("utf-8", { fatal: true }).decode(bytes));
  } catch {
    throw new Refusal("notRead", { detail: "The body is not JSON in UTF-8." });
  }
}

/** `If-Match: "7"`. A list, a weak tag or * would say that the asker does not know which version it saw. */
function versionOf(context: Context): number {
  const given = context.req.header("if-match");
  if (given === undefined) throw new Refusal("versionMissing", { detail: "Send the ETag of the thing you changed as If-Match." });
  const match = /^"(\d{1,15})"$/.exec(given.trim());
  if (match === null)
    throw fieldRefusal("notRead", "If-Match", given, 'one ETag as it was given, such as "7"', "If-Match is not one of our ETags.");
  return Number(match[1]);
}

/** The draft writes the key as a structured string, in quotes; most programs send it bare: both are the same key. */
function keyOf(context: Context, route: Route, bytes: Uint8Array): IdempotencyKey | null {
  if (route.key === undefined) return null;
  const given = context.req.header("idempotency-key")?.trim();
  if (given === undefined) {
    if (route.key === "allowed") return null;
    throw new Refusal("keyMissing", { detail: "Money is moved once: send an Idempotency-Key, the same for every retry." });
  }
  const key = given.replace(/^"(.*)"$/, "$1");
  const allowed = `1 to ${LONGEST_KEY} visible letters`;
  if (!/^[\x21-\x7e]+$/.test(key) || key.length > LONGEST_KEY)
    throw fieldRefusal("notRead", "Idempotency-Key", given, allowed, `Allowed: ${allowed}.`);
  const beside = `${new URL(context.req.url).search}\n${context.req.header("if-match") ?? ""}\n`;
  const bodyHash = createHash("sha256").update(beside).update(bytes).digest("hex");
  return { route: `${context.req.method} ${context.req.path}`, key, bodyHash };
}
