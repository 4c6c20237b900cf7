import type { MiddlewareHandler } from "hono";
import { PASSWORD_HEADER, type Route } from "#contract/routes/route";
import type { Accounts, NotIn } from "#records/accounts/accounts";
import { Refusal } from "./refusal.ts";
import type { VisitorEnv } from "./visitor.ts";

/** Whoever sits at an open session for a moment must not be able to take everything out or end what is kept: the password is asked for once more. */
export function passwordAgain({ again }: Route, accounts: Pick<Accounts, "doubt">): MiddlewareHandler<VisitorEnv> {
  return async (context, next) => {
    const { session } = context.var.visitor;
    if (again !== true || session === null) return next();
    const doubt = await accounts.doubt(session.personId, passwordIn(context.req.header(PASSWORD_HEADER)));
    if (doubt !== null) throw refusalOfTry(doubt);
    return next();
  };
}

function passwordIn(given: string | undefined): string {
  if (given === undefined || given === "")
    throw new Refusal("passwordWanted", { detail: `Send your own password once more, in ${PASSWORD_HEADER}.` });
  try {
    return decodeURIComponent(given);
  } catch {
    throw new Refusal("notRead", { detail: `${PASSWORD_HEADER} is not percent-encoded.` });
  }
}

/** The refusal of a try that did not open anything. */
export function refusalOfTry(outcome: NotIn): Refusal {
  if (outcome.kind === "wrong") return new Refusal("wrongSecret");
  return new Refusal("waitFirst", { detail: `Try again in ${outcome.seconds} s.`, retrySeconds: outcome.seconds });
}
