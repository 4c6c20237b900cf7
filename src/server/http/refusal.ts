import type { FieldProblem, ProblemDocument } from "#contract/routes/problemDocument";
import { PROBLEM_KINDS, type ProblemKind, problemType } from "#contract/routes/problemKinds";

interface Details {
  /** A sentence about this one case. */
  readonly detail?: string;
  readonly problems?: readonly FieldProblem[];
  /** The thing as it is now, where somebody else changed it. */
  readonly current?: unknown;
  /** When to ask again, s. */
  readonly retrySeconds?: number;
}

/** A request that cannot be done as asked; becomes problem details. */
export class Refusal extends Error {
  readonly kind: ProblemKind;
  readonly details: Details;

  constructor(kind: ProblemKind, details: Details = {}) {
    super(details.detail ?? PROBLEM_KINDS[kind].title);
    this.name = "Refusal";
    this.kind = kind;
    this.details = details;
  }
}

/** The refusal of one field. */
export function fieldRefusal(kind: ProblemKind, path: string, value: unknown, allowed: string, message: string): Refusal {
  return new Refusal(kind, { problems: [{ path, value, allowed, message }] });
}

/** What passes by itself. */
const PASSES: ReadonlySet<ProblemKind> = new Set(["busy", "tooMany", "waitFirst"]);
const RETRY_SECONDS = 2;

/** The answer that tells of a refusal. */
export function refusalResponse({ kind, details }: Refusal): Response {
  const { status, title } = PROBLEM_KINDS[kind];
  const document: ProblemDocument = {
    type: problemType(kind),
    title,
    status,
    ...(details.detail === undefined ? {} : { detail: details.detail }),
    ...(details.problems === undefined ? {} : { problems: [...details.problems] }),
    ...(details.current === undefined ? {} : { current: details.current }),
    ...(details.retrySeconds === undefined ? {} : { retrySeconds: details.retrySeconds }),
  };
  return new Response(JSON.stringify(document), {
    status,
    headers: {
      "Content-Type": "application/problem+json",
      "Cache-Control": "no-store",
      ...(PASSES.has(kind) ? { "Retry-After": String(details.retrySeconds ?? RETRY_SECONDS) } : {}),
      // RFC 9110, 15.5.2: what is asked for stands beside a 401; a session in a cookie has no registered scheme.
      ...(status === 401 ? { "WWW-Authenticate": 'Session realm="Gritwright"' } : {}),
    },
  });
}
