import type { Context, MiddlewareHandler } from "hono";
import { generateCookie, getCookie } from "hono/cookie";
import { type Least, mayDo, type Role } from "#contract/records/roles";
import type { WhoAmI } from "#contract/routes/access";
import { DEVICE_COOKIE, SESSION_COOKIE } from "#contract/routes/openApi";
import type { Accounts, Begun, LiveSession } from "#records/accounts/accounts";
import { addressOf } from "./address.ts";
import { Refusal } from "./refusal.ts";

/** Names which person of the shop does it, by id. It is no proof: without passwords whoever sits at the machine may act for anybody of the shop. */
export const PERSON_HEADER = "X-Gritwright-Person";

/** Which person of the shop acts where it has no passwords. */
export type PersonHere = (context: Context) => Promise<string>;

/** Who asks: from where, in which session, and the way to begin and end one. */
export interface Visitor {
  readonly state: WhoAmI["state"];
  /** Null where nobody is signed in, or nobody needs to be. */
  readonly session: LiveSession | null;
  /** What may be done: everything on a machine by itself whose shop has no passwords; nothing where there are and nobody is signed in. */
  readonly role: Role | null;
  /** Network address, for the limit on vain tries. */
  readonly address: string;
  /** What the browser is known by since somebody signed in there; null where it has nothing. */
  readonly device: string | null;
  /** Lets the browser be known again. */
  know(device: string): void;
  /** Whether the visitor may still be here: event streams ask from time to time. */
  isStillIn(): Promise<boolean>;
  /** Gives the browser a session that has begun; null takes it away. */
  give(begun: Pick<Begun, "token" | "session"> | null): void;
}

export interface VisitorEnv {
  readonly Variables: { visitor: Visitor };
}

export interface VisitorParts {
  readonly accounts: Pick<Accounts, "any" | "recognise" | "isLive">;
  /** Whether the connection is encrypted. */
  readonly isEncrypted: boolean;
  /** Whether others can reach the server: without any password nobody is let in there, whatever was restored under it meanwhile. */
  readonly isOnNetwork: boolean;
  readonly now: () => number;
}

/** Finds out who asks, and sends the session's cookie along with whatever is answered, refusals too. */
export function identifyVisitor({ accounts, isEncrypted, isOnNetwork, now }: VisitorParts): MiddlewareHandler<VisitorEnv> {
  const name = isEncrypted ? SESSION_COOKIE.secure : SESSION_COOKIE.plain;
  const deviceName = isEncrypted ? DEVICE_COOKIE.secure : DEVICE_COOKIE.plain;
  return async (context, next) => {
    const cookies: string[] = [];
    const give: Visitor["give"] = (begun) => {
      cookies.push(cookieOf(name, isEncrypted, begun, now()));
    };
    let device: string | null = null;
    const token = getCookie(context, name);
    const recognised = token === undefined ? null : await accounts.recognise(token);
    const session = recognised?.session ?? null;
    if (session !== null && recognised?.renewed !== null && recognised !== null) give({ token: recognised.renewed, session });
    const isOpen = session === null && !isOnNetwork && !(await accounts.any());
    context.set("visitor", {
      state: session !== null ? "signed in" : isOpen ? "no passwords" : "signed out",
      session,
      role: session?.role ?? (isOpen ? "owner" : null),
      address: addressOf(context),
      device: getCookie(context, deviceName) ?? null,
      know: (mark) => {
        device = mark;
      },
      isStillIn: async () => (session === null ? isOpen && !(await accounts.any()) : accounts.isLive(session.id)),
      give,
    });
    await next();
    const last = cookies.at(-1);
    if (last !== undefined) context.res.headers.append("Set-Cookie", last);
    if (device !== null)
      context.res.headers.append("Set-Cookie", generateCookie(deviceName, device, { ...HIDDEN, secure: isEncrypted, maxAge: YEAR_S }));
  };
}

const HIDDEN = { path: "/", httpOnly: true, sameSite: "Strict" } as const;
const YEAR_S = 365 * 86_400;

/** No script reads it, no other site's request carries it, and encrypted it belongs to this host alone. */
function cookieOf(name: string, isEncrypted: boolean, begun: Pick<Begun, "token" | "session"> | null, now: number): string {
  const maxAge = begun === null ? 0 : Math.max(0, Math.floor((begun.session.endsAt - now) / 1000));
  return generateCookie(name, begun?.token ?? "", { ...HIDDEN, secure: isEncrypted, maxAge });
}

/** @throws {Refusal} `notSignedIn`, `notForRole` */
export function mustBeLetIn({ role }: Visitor, least: Least): void {
  if (least === "anybody") return;
  if (role === null) throw new Refusal("notSignedIn", { detail: "Sign in with a name and a password." });
  if (!mayDo(role, least))
    throw new Refusal("notForRole", { detail: `This is for the role ${least} or one that may do more; yours is ${role}.` });
}

/**
 * The id of the person who acts: of the session; where nobody needs to be signed in, whoever the page names.
 *
 * @throws {Refusal} `otherPerson` where the page writes for somebody else than the session's person: another tab has changed the person meanwhile
 */
export async function personOf(context: Context, { session }: Visitor, personHere: PersonHere): Promise<string> {
  if (session === null) return personHere(context);
  const named = context.req.header(PERSON_HEADER);
  const changesNothing = context.req.method === "GET" || context.req.method === "HEAD";
  if (named !== undefined && named !== session.personId && !changesNothing) throw new Refusal("otherPerson");
  return session.personId;
}
