import { hc } from "hono/client";
import type { Api } from "#contract/routes/client";
import type { FieldProblem, ProblemDocument } from "#contract/routes/problemDocument";
import { type ProblemKind, problemType } from "#contract/routes/problemKinds";
import { reportConnection } from "./connection.ts";
import { actingPerson, PERSON_HEADER } from "./person.ts";
import { announceSession } from "./sessionNews.ts";

/** The shop's server, typed from the table of its routes. */
export const shop = hc<Api>(location.origin, { headers: (): Record<string, string> => personHeader() }).api;

function personHeader(): Record<string, string> {
  const person = actingPerson();
  return person === null ? {} : { [PERSON_HEADER]: person };
}

/** The server said no, and why; or it was not there at all, and `problem` is null. */
export class ShopFault extends Error {
  readonly problem: ProblemDocument | null;

  constructor(problem: ProblemDocument | null, message: string) {
    super(message);
    this.name = "ShopFault";
    this.problem = problem;
  }

  isKind(kind: ProblemKind): boolean {
    return this.problem?.type === problemType(kind);
  }

  /** What is wrong, by field. */
  get fields(): readonly FieldProblem[] {
    return this.problem?.problems ?? [];
  }
}

interface Answering {
  readonly ok: boolean;
  readonly status: number;
  readonly headers: Pick<Headers, "get">;
  json(): Promise<unknown>;
}

/** What an answer holds when it is no problem. */
type BodyOf<R> = R extends { json(): Promise<infer Body> } ? Exclude<Body, ProblemDocument> : never;

/**
 * The answer to a request.
 *
 * @throws {ShopFault} when the server refuses, cannot be reached, or says something that is no answer
 */
export async function answered<R extends Answering>(asked: Promise<R>): Promise<BodyOf<R>> {
  const response = await asked.catch((error: unknown) => {
    reportConnection({ isOffline: true, readAt: null });
    throw new ShopFault(null, error instanceof Error ? error.message : String(error));
  });
  // Only what was kept in this browser has an age: the server is away.
  const age = response.headers.get("age");
  reportConnection(
    age === null ? { isOffline: false } : { isOffline: true, readAt: new Date(Date.now() - 1000 * Number(age)).toISOString() },
  );
  if (!response.ok) throw await refusalOf(response);
  return (response.status === 204 ? null : await response.json()) as BodyOf<R>;
}

/** Why the server refused; without a problem where it said nothing that can be read. */
export async function refusalOf(response: Pick<Answering, "status" | "json">): Promise<ShopFault> {
  const body: unknown = await response.json().catch(() => null);
  // The network may go between the answer and this file.
  const reader = await import("#contract/routes/problemDocument").catch(() => null);
  const problem = reader?.problemDocumentSchema.safeParse(body);
  if (problem?.success !== true) return new ShopFault(null, `Status ${response.status}`);
  const fault = new ShopFault(problem.data, problem.data.detail ?? problem.data.title);
  if (fault.isKind("notSignedIn") || fault.isKind("otherPerson")) announceSession();
  return fault;
}

/** A key for one write: sent again with it, the write is done once. Works where the page is no secure context too. */
export function newKey(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, "0")).join("");
}

/** The header that says which version of a thing a change was made on. */
export function madeOn({ version }: { readonly version: number }): { "If-Match": string } {
  return { "If-Match": `"${version}"` };
}
