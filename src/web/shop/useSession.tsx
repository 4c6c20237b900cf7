import { useQueryClient } from "@tanstack/react-query";
import { createContext, type ReactNode, useContext, useEffect, useRef, useState } from "react";
import { type Least, mayDo, ROLES, type Role } from "#contract/records/roles";
import type { WhoAmI } from "#contract/routes/access";
import { recall, remember } from "../client/memory.ts";
import { forgetRead } from "../offline/install.ts";
import { actAs } from "./person.ts";
import { onSession, SESSION_MEMORY } from "./sessionNews.ts";
import { answered, shop } from "./shopClient.ts";
import { useRead } from "./useShop.ts";

const SESSION = "session";
const KEY = [SESSION];
const OPEN: WhoAmI = { state: "no passwords", personId: null, role: null, sessionId: null };
const SIGNED_OUT: WhoAmI = { ...OPEN, state: "signed out" };
const STATES: readonly WhoAmI["state"][] = ["no passwords", "signed out", "signed in"];
const LOWEST: Role = "reader";

const Here = createContext<WhoAmI>(OPEN);

/** Knows who is signed in, for everything inside. While the server is away it is whoever was last. */
export function SessionProvider({ children }: { readonly children: ReactNode }) {
  const client = useQueryClient();
  const [last] = useState(lastKnown);
  const asked = useRead(KEY, () => answered(shop.session.$get()));
  const who = asked.data ?? last;
  useEffect(() => onSession(() => void client.invalidateQueries({ queryKey: KEY })), [client]);
  useForgetting(who, asked.data !== undefined);
  // Before anything is drawn that writes: what is sent names who is signed in.
  if (who.personId !== null) actAs(who.personId);
  const shown = useLastIn(who);
  // At the very first opening it is not known yet whether anybody must sign in, and a room would only be refused.
  if (asked.isPending && recall(SESSION_MEMORY) === null) return null;
  return <Here.Provider value={shown}>{children}</Here.Provider>;
}

/** After a session that has ended, whose it was: the room stays as it stood, behind the sign-in. */
function useLastIn(who: WhoAmI): WhoAmI {
  const [lastIn, setLastIn] = useState<WhoAmI | null>(null);
  if (who.state === "signed in" && who.sessionId !== lastIn?.sessionId) setLastIn(who);
  return who.state === "signed out" ? { ...(lastIn ?? OPEN), state: "signed out", sessionId: null } : who;
}

/**
 * Somebody else is here than before: what was read for the one before is thrown away, in view, in memory and in this browser. A session that has only
 * ended throws nothing away: the same person goes on where the room stood.
 */
function useForgetting(who: WhoAmI, isKnown: boolean): void {
  const client = useQueryClient();
  const before = useRef(lastKnown().personId);
  useEffect(() => {
    if (!isKnown) return;
    const text = JSON.stringify(who.personId === null ? { ...who, personId: before.current } : who);
    // A change of what is kept is news for the other tabs.
    if (recall(SESSION_MEMORY) !== text) remember(SESSION_MEMORY, text);
    if (who.personId === null || before.current === who.personId) return;
    before.current = who.personId;
    const isRead = ({ queryKey }: { readonly queryKey: readonly unknown[] }) => queryKey[0] !== SESSION;
    void forgetRead();
    client.removeQueries({ predicate: isRead, type: "inactive" });
    void client.resetQueries({ predicate: isRead, type: "active" });
  }, [client, who, isKnown]);
}

/** Who is signed in here; `no passwords` where nobody needs to be. */
export function useSession(): WhoAmI {
  return useContext(Here);
}

/** Takes what a sign-in or a take-over answered. */
export function useEnter(): (who: WhoAmI) => void {
  const client = useQueryClient();
  return (who) => client.setQueryData(KEY, who);
}

/** After signing out: begins the page anew, with nothing of what was read. */
export async function leaveSession(): Promise<void> {
  remember(SESSION_MEMORY, JSON.stringify(SIGNED_OUT));
  await forgetRead();
  location.replace("/");
}

/** What the person here may do; everything where the shop has no passwords. */
export function useMay(): (least: Least) => boolean {
  const { state, role } = useSession();
  return (least) => mayDo(state === "no passwords" ? "owner" : (role ?? LOWEST), least);
}

/** What only some roles may use is not offered to the others. */
export function For({ least, children }: { readonly least: Least; readonly children: ReactNode }) {
  return useMay()(least) ? children : null;
}

function lastKnown(): WhoAmI {
  const text = recall(SESSION_MEMORY);
  if (text === null) return OPEN;
  try {
    const kept: unknown = JSON.parse(text);
    return isWhoAmI(kept) ? kept : OPEN;
  } catch {
    return OPEN;
  }
}

/** What this browser kept may be of an older page. By hand: the schemas are not loaded for the shop's first room. */
function isWhoAmI(kept: unknown): kept is WhoAmI {
  if (typeof kept !== "object" || kept === null) return false;
  const { state, personId, role, sessionId } = kept as Readonly<Record<keyof WhoAmI, unknown>>;
  const isName = (value: unknown) => value === null || typeof value === "string";
  return (
    STATES.some((one) => one === state) && isName(personId) && isName(sessionId) && (role === null || ROLES.some((one) => one === role))
  );
}
