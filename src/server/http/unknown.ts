import type { Handler } from "hono";
import type { Route } from "#contract/routes/route";
import { Refusal, refusalResponse } from "./refusal.ts";

/** Below /api whatever is no route: 405 with what can be done where the path is known, else 404. */
export function unknownRoute(table: Readonly<Record<string, Route>>): Handler {
  const known = Object.values(table).map(({ method, path }) => ({
    method: method.toUpperCase(),
    shape: new RegExp(`^${path.replace(/:\w+/g, "[^/]+").replaceAll(".", "\\.")}$`),
  }));
  return (context) => {
    const here = known.filter(({ shape }) => shape.test(context.req.path)).map(({ method }) => method);
    if (here.length === 0) return refusalResponse(new Refusal("notFound", { detail: "There is no such route; see /api/openapi.json." }));
    const response = refusalResponse(new Refusal("methodNotAllowed"));
    response.headers.set("Allow", here.join(", "));
    return response;
  };
}
