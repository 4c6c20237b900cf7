import type { z } from "zod";
import type { Least } from "../records/roles.ts";

/** What a request carries beside its address. */
export type RouteBody =
  | {
      readonly kind: "json";
      readonly schema: z.ZodType;
      /** Gives a body that an older client sent today's keys, before it is checked. */
      readonly older?: (body: unknown) => unknown;
    }
  /** A file as it is; what it really is, is seen from its first bytes. */
  | { readonly kind: "file"; readonly types: readonly string[] };

/** What comes back when all goes well. */
export type RouteAnswer =
  | { readonly kind: "json"; readonly status: 200 | 201 | 202; readonly schema: z.ZodType }
  | { readonly kind: "none"; readonly status: 204 }
  | { readonly kind: "file"; readonly status: 200; readonly types: readonly string[] }
  /** Server-sent events, by their names. */
  | { readonly kind: "events"; readonly status: 200; readonly events: Readonly<Record<string, z.ZodType>> };

/** The password once more, percent-encoded (RFC 3986, 2.1): a header holds no other letters than those of ASCII. */
export const PASSWORD_HEADER = "X-Gritwright-Password";

/** One way to ask something of the server. The table of all of them is the server's router, its description and the type of its client. */
export interface Route {
  /** Who may ask this at the least; every route says so, or the table does not compile. */
  readonly least: Least;
  readonly method: "get" | "post" | "patch" | "delete";
  /** With parameters as `:id`. */
  readonly path: `/api/${string}`;
  /** What it does, in a sentence without a full stop. */
  readonly does: string;
  readonly params?: z.ZodObject;
  readonly query?: z.ZodObject;
  readonly body?: RouteBody;
  readonly answer: RouteAnswer;
  /** Where the shop has passwords, the person's own is asked for once more, in the header {@link PASSWORD_HEADER}. */
  readonly again?: true;
  /** The thing changes only if it still is the version that `If-Match` names. */
  readonly match?: true;
  /** `Idempotency-Key`: a repeated request with the same key is answered as the first was and changes nothing. */
  readonly key?: "allowed" | "required";
  /** Where the thing that was made can be asked for; `:id` is its id. */
  readonly location?: string;
}

/** A route, with its exact types kept. */
export function route<const R extends Route>(given: R): R {
  return given;
}

/** The parameter names of a path: `/api/balls/:id` has `id`. */
export function paramNames(path: string): string[] {
  return [...path.matchAll(/:(\w+)/g)].map(([, name]) => name);
}

/** JSON that is sent. */
export function json<const S extends z.ZodType>(schema: S) {
  return { kind: "json", schema } as const;
}

/** JSON that comes back. */
export function answers<const S extends z.ZodType, const Status extends 200 | 201 | 202 = 200>(schema: S, status?: Status) {
  return { kind: "json", status: status ?? (200 as Status), schema } as const;
}

export const NOTHING = { kind: "none", status: 204 } as const;
