import { mayDo, type Role } from "#contract/records/roles";
import { API } from "#contract/routes/api";
import { problemType } from "#contract/routes/problemKinds";
import type { Route } from "#contract/routes/route";

/** Every route of the table. Whoever signs out asks nothing more, so that comes last. */
export const ROUTES = Object.entries<Route>(API).toSorted(([a], [b]) => Number(a === "signOut") - Number(b === "signOut"));
const NO_ID = "01890000-0000-7000-8000-000000000000";

export const NOBODY = `401 ${problemType("notSignedIn")}`;
export const NOT_THIS_ROLE = `403 ${problemType("notForRole")}`;
const KEPT_OUT = new Set([NOBODY, NOT_THIS_ROLE]);

type Ask = (path: string, init: RequestInit) => Promise<Response>;

/** Asks a route with nothing sensible in it, so that who may ask is all that matters. @returns status, and what kind of problem it was */
export async function kindOf(ask: Ask, route: Route, cookie: string | null): Promise<string> {
  const response = await ask(route.path.replace(/:\w+/g, NO_ID), {
    method: route.method.toUpperCase(),
    headers: { "content-type": "application/json", ...(cookie === null ? {} : { cookie }) },
    ...(route.body === undefined ? {} : { body: "[]" }),
  });
  if (!response.headers.get("content-type")?.includes("problem+json")) {
    await response.body?.cancel();
    return String(response.status);
  }
  const { type } = (await response.json()) as { readonly type: string };
  return `${response.status} ${type}`;
}

/** Whether an answer is what the table says of a role; of nobody and of strangers where it is null. */
export function isAsTheTableSays({ least }: Route, role: Role | null, kind: string): boolean {
  if (least === "anybody") return kind !== NOT_THIS_ROLE;
  if (role === null) return kind === NOBODY;
  return mayDo(role, least) ? !KEPT_OUT.has(kind) : kind === NOT_THIS_ROLE;
}
